import type { FrameRange } from '../core/film';
import { copyOf, type GreyFrame } from '../core/frame';
import { ExitframeError, orThrow } from '../core/reason';
import { createActivityMeter } from '../image/activity';
import { steadyBackground } from '../image/steadyBackground';
import { streakReader } from '../image/streak';
import type { Background, StreakLine } from '../image/types';
import { REST_FRAMES } from '../seal/reference';
import { backgroundStep } from './background';
import { framesToSurvey, settledBy } from './passage';
import { smallPictures } from './smallPictures';
import type { Work } from './work';

/** What one pass over a whole film gives before anything is looked for in it. */
export interface FirstPass {
  readonly background: Background;
  /** The clip's first frames: seals are at rest. */
  readonly atRest: readonly GreyFrame[];
  /** The frames worth a closer look. */
  readonly worthALook: readonly FrameRange[];
  /** One a frame: its light over that of the first. */
  readonly gains: Float64Array;
}

/** Told of a pass as it goes on. */
export interface PassWatch {
  /** Takes over each frame, in order, and is told whether anything moves in it. */
  frame(frame: GreyFrame, isActive: boolean): void;
  /** All that will be worth a closer look of the film so far, each time something has come to rest. */
  settled(ranges: readonly FrameRange[]): void;
}

/**
 * The only pass over all of the film: the frames that the scene is read from, the streak image along `line`, and which
 * frames are worth a closer look. Throws `noFrames`, and what `steadyBackground` refuses.
 */
export async function passOver(line: StreakLine, work: Work, watch: PassWatch): Promise<FirstPass> {
  const { inputs, scene, film, onEvent, cancellation } = work;
  const { info } = inputs;
  const total = info.frameCount;
  const step = backgroundStep(info);
  const meter = createActivityMeter(info.width, info.height, scene.ballRadius);
  const readStreak = streakReader(info.width, info.height, line);
  const [spread, atRest]: [GreyFrame[], GreyFrame[]] = [[], []];
  const smallOf = smallPictures(total);
  const isActive = new Uint8Array(total);
  const gains = new Float64Array(total).fill(1);
  onEvent({ kind: 'streakLine', line, frames: total });
  for await (const frame of film.frames({ start: 0, end: total })) {
    cancellation.throwIfAborted();
    const { index } = frame;
    if (index % step === 0) spread.push(copyOf(frame));
    if (index < REST_FRAMES) atRest.push(copyOf(frame));
    const activity = meter.read(frame);
    isActive[index] = activity.isActive ? 1 : 0;
    gains[index] = activity.gain;
    onEvent({ kind: 'streakRow', frame: index, row: readStreak(frame) });
    const picture = smallOf(frame);
    if (picture !== null) onEvent({ kind: 'smallPicture', picture });
    watch.frame(frame, activity.isActive);
    const settled = settledBy(index, isActive);
    if (settled !== null) watch.settled(settled);
    onEvent({ kind: 'progress', stage: 'background', done: index + 1, total });
  }
  if (spread.length === 0) throw new ExitframeError('noFrames', 'The film gave no frames.');
  const { manualPoints, seeds } = inputs.shot.edits;
  const named = [...manualPoints, ...seeds].map(({ frame }) => frame);
  const background = orThrow(steadyBackground(spread));
  for (const frame of spread) film.done?.(frame);
  return {
    background,
    worthALook: framesToSurvey(isActive, named),
    ...{ atRest, gains },
  };
}

/** The streak image along another line than that of the first pass. */
export async function passAlong(line: StreakLine, work: Work): Promise<void> {
  const { inputs, film, onEvent, cancellation } = work;
  const { width, height, frameCount: end } = inputs.info;
  const readStreak = streakReader(width, height, line);
  onEvent({ kind: 'streakLine', line, frames: end });
  for await (const frame of film.frames({ start: 0, end })) {
    cancellation.throwIfAborted();
    onEvent({ kind: 'streakRow', frame: frame.index, row: readStreak(frame) });
    film.done?.(frame);
  }
}
