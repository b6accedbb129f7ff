import { join, resolve } from 'node:path';
import { type Outcome, reasonOf } from '../core/reason';
import type { SetupScene } from '../reduction/setupScene';
import type { Shot } from '../shot/schema';
import { setupKey } from '../shot/setup';
import { type Crew, createCrew } from './crew';
import { programSha256 } from './inputs';
import { resultName } from './resultFiles';
import { givenScenes } from './setupScenes';
import { readShot } from './shotFiles';
import type { Task, TaskDone } from './task';

const REDUCER = new URL('./reducer.ts', import.meta.url);

export interface ManyShots {
  /** Shot files. */
  readonly shots: readonly string[];
  /** Shot and setup files whose still scenes the shots of their setups are held against. */
  readonly setupFrom: readonly string[];
  /** Folder of the results; null: none are written or kept. */
  readonly out: string | null;
  /** Reduce what was reduced already. */
  readonly again: boolean;
  /** How many at a time. */
  readonly jobs: number;
}

/** A shot and where it stands among the arguments. */
interface Place {
  readonly i: number;
  readonly path: string;
  readonly shot: Shot;
}

/**
 * Reduces many shots; `onDone` gets each in the order of the arguments. How many are reduced at a time changes nothing
 * else: all shots of a setup are held against the first of them, which is reduced before the others, or against a scene
 * given. Throws where such a scene cannot be had.
 */
export async function reduceMany(
  { shots, setupFrom, out, again, jobs }: ManyShots,
  onDone: (path: string, outcome: Outcome<TaskDone>) => void,
): Promise<void> {
  const scenes = await givenScenes(setupFrom);
  const program = await programSha256();
  const crew: Crew<Task, TaskDone> = createCrew(REDUCER, jobs);
  const tell = inOrder<Outcome<TaskDone>>((i, outcome) => onDone(shots[i] as string, outcome));

  const reduce = async (place: Place, setupScene: SetupScene | null, wantsScene: boolean) => {
    const { i, path, shot } = place;
    const file = out === null ? null : join(out, resultName(path));
    const task = { shot, path, program, setupScene, out: file, again, wantsScene };
    const outcome = await crew.run(task);
    tell(i, outcome);
    return outcome.ok ? outcome.value.scene : null;
  };
  const reduceSetup = async (key: string, places: readonly Place[]) => {
    const given = scenes.get(key);
    let scene = given?.scene ?? null;
    let left = places;
    // Where the first cannot be reduced the next takes its place.
    while (scene === null && left[0] !== undefined) {
      const [first, ...others] = left;
      scene = await reduce(first, null, others.length > 0);
      left = others;
    }
    // No scene is held against itself.
    const against = ({ path }: Place) => (resolve(path) === given?.from ? null : scene);
    await Promise.all(left.map((place) => reduce(place, against(place), false)));
  };

  const setups = new Map<string, Place[]>();
  const alone: Place[] = [];
  for (const [i, path] of shots.entries()) {
    try {
      const shot = await readShot(path);
      const key = setupKey(shot);
      if (key === null) alone.push({ i, path, shot });
      else setups.set(key, [...(setups.get(key) ?? []), { i, path, shot }]);
    } catch (error) {
      tell(i, { ok: false, reason: reasonOf(error) });
    }
  }
  await Promise.all([
    ...[...setups].map(([key, places]) => reduceSetup(key, places)),
    ...alone.map((place) => reduce(place, null, false)),
  ]);
  crew.end();
}

/** Hands on what comes in any order by its place, from 0 on. */
function inOrder<T>(tell: (i: number, what: T) => void): (i: number, what: T) => void {
  const early = new Map<number, T>();
  let next = 0;
  return (i, what) => {
    early.set(i, what);
    for (let one = early.get(next); one !== undefined; one = early.get(next)) {
      early.delete(next);
      tell(next++, one);
    }
  };
}
