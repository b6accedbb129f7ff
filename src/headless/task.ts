import type { SetupScene } from '../reduction/setupScene';
import type { Shot } from '../shot/schema';
import { inputsOf } from './inputs';
import { reduceFootage, sceneOf } from './reduceFile';
import { keptResult, writeWhole } from './resultFiles';
import { findFootage } from './shotFiles';

/** One shot to be reduced. */
export interface Task {
  readonly shot: Shot;
  /** Of the shot file. */
  readonly path: string;
  /** SHA-256 of the program. */
  readonly program: string;
  /** What its still scene is held against; null: nothing. */
  readonly setupScene: SetupScene | null;
  /** File the result goes to; null: none. */
  readonly out: string | null;
  /** Reduce it even if that file holds the result of the same inputs. */
  readonly again: boolean;
  /** Whether other shots wait for its still scene. */
  readonly wantsScene: boolean;
}

export interface TaskDone {
  /** The result as it stands in its file. */
  readonly text: string;
  /** It was there already. */
  readonly kept: boolean;
  /** Null: not wanted. */
  readonly scene: SetupScene | null;
}

/** Reduces a shot, or finds its result made already. Throws as `findFootage` and `reduceFootage`, or what writing throws. */
export async function perform(task: Task): Promise<TaskDone> {
  const { shot, path, program, setupScene, out, again, wantsScene } = task;
  const footage = await findFootage(shot, path);
  const inputs = inputsOf(program, shot, footage.sha256, setupScene);
  const kept = out === null || again ? null : await keptResult(out, inputs.sha256);
  if (kept !== null) {
    return { text: kept, kept: true, scene: wantsScene ? await sceneOf(shot, footage) : null };
  }
  const { result, fingerprint } = await reduceFootage(shot, footage, setupScene);
  const text = `${JSON.stringify({ ...result, inputs }, null, 2)}\n`;
  if (out !== null) await writeWhole(out, text);
  const scene = wantsScene ? { shotName: shot.name, fingerprint } : null;
  return { text, kept: false, scene };
}
