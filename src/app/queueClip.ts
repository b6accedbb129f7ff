import { AS_FOUND } from '../core/film';
import { orThrow } from '../core/reason';
import type { Stage } from '../reduction/types';
import type { Setup } from '../shot/setupFile';
import type { Bench } from './crew';
import { completeShot, footageOf, newDraft, type ShotDraft } from './draft';
import { pathOf } from './filmShelf';
import { headerlessOf } from './footageFiles';
import { reductionInputs } from './reductionInputs';
import type { Result, Shot } from './resultTypes';
import type { SetupSceneStore } from './setupScenes';
import { followSetup, setupFits, sharedOf } from './setups';

export interface ClipMeasured {
  readonly shot: Shot;
  readonly result: Result;
}

interface Task {
  readonly bench: Bench;
  readonly scenes: SetupSceneStore;
  readonly setup: Setup;
  readonly clip: { readonly name: string; readonly files: readonly File[] };
  /** The shot that is open on the screen. */
  readonly open: ShotDraft | null;
  readonly signal: AbortSignal;
  /** Told of each stage with the share of it done; null: the clip is being opened. */
  onStage(stage: Stage | null, share: number): void;
}

/** Opens a clip, states of it what the setup states, and measures it. Throws the reason where that cannot be. */
export async function measureClip(task: Task): Promise<ClipMeasured> {
  const { bench, scenes, setup, clip, open, signal } = task;
  task.onStage(null, 0);
  const { film, reduce } = bench;
  const files = clip.files.map((file) => ({ name: file.name, blob: file }));
  // Clips from one camera are alike: they are read as the shot that is open.
  const raw = headerlessOf(files) && (open?.footage.reading.raw ?? null);
  const reading = { ...(open?.footage.reading ?? AS_FOUND), raw };
  const info = await film.open(files, reading);
  signal.throwIfAborted();
  orThrow(setupFits(setup, info));
  const timestamps = await film.timestamps();
  const sha256 = await film.sha256();
  signal.throwIfAborted();
  const paths = clip.files.map(pathOf);
  const draft = followSetup(setup)({
    ...newDraft(info, paths, timestamps, reading),
    ...(open === null ? {} : sharedOf(open, setup)),
    ...{ name: clip.name, footage: footageOf(paths, sha256, reading) },
  });
  const shot = orThrow(completeShot(draft));
  const { inputsOf, keepScene } = reductionInputs({ audio: () => film.audio() }, scenes);
  const inputs = await inputsOf(shot, { info, timestamps, sha256, reading });
  signal.throwIfAborted();
  const reduction = await reduce.reduce(inputs, (events) => {
    const last = events.findLast((event) => event.kind === 'progress');
    if (last !== undefined) task.onStage(last.stage, last.done / Math.max(1, last.total));
  });
  keepScene(shot, reduction);
  return { shot, result: reduction.result };
}
