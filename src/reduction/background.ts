import type { FootageInfo } from '../core/film';
import type { GreyFrame } from '../core/frame';
import { type Outcome, orThrow } from '../core/reason';
import { frameBack, isMoved } from '../image/moved';
import { createRegistrar } from '../image/registration';
import { steadyBackground } from '../image/steadyBackground';
import type { Background } from '../image/types';
import { sealReference } from '../seal/reference';
import type { ReductionInputs } from './types';
import type { Work } from './work';

/** Frames that make the background: enough for a median that a passing ball cannot move, few enough to hold. */
const BACKGROUND_FRAMES = 48;
const FEWEST_BACKGROUND_FRAMES = 5;
const BACKGROUND_BYTES = 192 * 1024 * 1024;

/** What reading the scene takes of a pass through a film. */
export type ScenePass = Pick<Work, 'film' | 'onEvent' | 'cancellation'> & {
  readonly inputs: Pick<ReductionInputs, 'info'>;
};

/** The scene is read from every so many-th frame, so that they are spread over the whole clip. */
export function backgroundStep({ width, height, bitDepth, frameCount }: FootageInfo): number {
  const frameBytes = width * height * (bitDepth > 8 ? 2 : 1);
  const most = Math.max(
    FEWEST_BACKGROUND_FRAMES,
    Math.min(BACKGROUND_FRAMES, Math.floor(BACKGROUND_BYTES / frameBytes)),
  );
  // Rounded up: the frames then reach the end of the clip.
  return Math.ceil(frameCount / most);
}

/** The scene without the ball. */
export async function readBackground({
  inputs: { info },
  film,
  onEvent,
  cancellation,
}: ScenePass): Promise<Background> {
  const step = backgroundStep(info);
  const total = Math.ceil(info.frameCount / step);
  const frames: GreyFrame[] = [];
  for await (const frame of film.frames({ start: 0, end: info.frameCount, step })) {
    cancellation.throwIfAborted();
    frames.push(frame);
    onEvent({ kind: 'progress', stage: 'background', done: frames.length, total });
  }
  const background = orThrow(steadyBackground(frames));
  for (const frame of frames) film.done?.(frame);
  return background;
}

/** The scene with the seal at rest, from the clip's first frames. */
export function referenceOf(
  first: readonly GreyFrame[],
  background: Background,
): Outcome<Background> {
  const register = createRegistrar(background);
  const still = first.map((frame) => {
    const shift = register(frame);
    if (shift === null || !isMoved([shift.x, shift.y])) return frame;
    return frameBack(frame, [shift.x, shift.y], [0, 0, frame.width, frame.height]);
  });
  return sealReference(still, background);
}
