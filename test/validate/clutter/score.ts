import { createMeasurer } from '../../../src/reduction/measurer';
import { reduceShot } from '../../../src/reduction/reduceShot';
import type { ReductionInputs } from '../../../src/reduction/types';
import type { FrameSupply } from '../../../src/reduction/work';
import { validateShot } from '../../../src/shot/parse';
import type { Position, Result } from '../../../src/shot/result';
import type { ClutteredFilm } from './film';
import type { Kind } from './kinds';

/** m; the scenario's ball. */
const BALL_DIAMETER = 0.03;

/** A film whose positions were accepted or refused, frame by frame against the truth. */
export interface Score {
  readonly kinds: readonly Kind[];
  /** Frames with half of a whole ball in view, and those of them accepted. */
  readonly due: number;
  readonly accepted: number;
  /** All accepted frames. */
  readonly taken: number;
  /** Frames that should have been accepted and were not, with the reason. */
  readonly missed: readonly { readonly frame: number; readonly why: string }[];
  /** Accepted frames more than a pixel off. */
  readonly wrong: readonly { readonly frame: number; readonly error: number }[];
  /** Accepted although the ball was broken. */
  readonly afterBreak: readonly number[];
  /** Largest error of an accepted position, px; 0 where there is none. */
  readonly worst: number;
  /** First frame with the ball broken, as it is and as reported. */
  readonly brokenFrom: number | null;
  readonly reportedBreak: number | null;
}

/** Accepted positions may be off by this, px. */
export const MOST_ERROR = 1;
/** Visible share of the disc from which a frame should be accepted. */
export const ENOUGH_IN_VIEW = 0.5;

/** Reduces a film as the program would and compares its positions with the truth. */
export async function scoreFilm(film: ClutteredFilm): Promise<Score> {
  return scoreResult(film, await reduceFilm(film));
}

export async function reduceFilm(film: ClutteredFilm): Promise<Result> {
  const { signal } = new AbortController();
  const ignore = () => {};
  const { result } = await reduceShot(
    inputsOf(film),
    supplyOf(film),
    createMeasurer(),
    ignore,
    signal,
  );
  return result;
}

export function scoreResult(
  film: Pick<ClutteredFilm, 'kinds' | 'truth' | 'brokenFrom'>,
  result: Pick<Result, 'positions' | 'breakUp'>,
): Score {
  const positions = new Map(result.positions.map((one) => [one.frame, one]));
  const missed: Score['missed'][number][] = [];
  const wrong: Score['wrong'][number][] = [];
  const afterBreak: number[] = [];
  let due = 0;
  let accepted = 0;
  let taken = 0;
  let worst = 0;
  film.truth.forEach(({ at, visible, whole }, frame) => {
    const position = positions.get(frame);
    const isTaken = position !== undefined && isAccepted(position);
    const isDue = whole && visible >= ENOUGH_IN_VIEW;
    if (isDue) due++;
    if (!isTaken) {
      const why = position?.why?.code ?? 'notLookedAt';
      if (isDue) missed.push({ frame, why });
      return;
    }
    taken++;
    if (isDue) accepted++;
    if (!whole) {
      afterBreak.push(frame);
      return;
    }
    const error = Math.hypot(position.x - at[0], position.y - at[1]);
    worst = Math.max(worst, error);
    if (error > MOST_ERROR) wrong.push({ frame, error });
  });
  return {
    kinds: film.kinds,
    due,
    accepted,
    taken,
    missed,
    wrong,
    afterBreak,
    worst,
    brokenFrom: film.brokenFrom,
    reportedBreak: result.breakUp?.frame ?? null,
  };
}

/** A position stands although the fit of free flight begins only past the muzzle. */
const isAccepted = (
  position: Position,
): position is Position & { readonly x: number; readonly y: number } =>
  position.x !== null &&
  position.y !== null &&
  (position.why === null || position.why.code === 'beforeExit');

function supplyOf({ frames, width, height }: ClutteredFilm): FrameSupply {
  return {
    async *frames({ start, end, step = 1 }) {
      for (let index = start; index < Math.min(end, frames.length); index += step) {
        const data = frames[index] as Uint8Array;
        yield { index, width, height, data, white: 255 };
      }
    },
  };
}

function inputsOf(film: ClutteredFilm): ReductionInputs {
  const { width, height, radius, framesPerSecond, exposure, muzzle, frames } = film;
  const shot = validateShot({
    format: 'exitframe-shot',
    version: 2,
    name: 'rendered with clutter',
    footage: { path: 'clip.avi', sha256: null },
    timing: {
      source: 'recordingRate',
      recordingRate: { value: framesPerSecond, u: 5e-5 * framesPerSecond },
      exposure: { value: exposure / framesPerSecond, u: (0.02 * exposure) / framesPerSecond },
    },
    scale: {
      lengths: [
        {
          from: [10, height - 12],
          to: [width - 10, height - 12],
          length: ((width - 20) * BALL_DIAMETER) / (2 * radius),
          u: 1e-4,
        },
      ],
    },
    ball: { diameter: { value: BALL_DIAMETER, u: 5e-5 }, mass: { value: 0.0019, u: 1e-5 } },
    // The direction of travel is not stated: it is found from the path.
    muzzle: { point: muzzle, u: 0.5, axis: null },
    seals: null,
  });
  if (!shot.ok) throw new Error(shot.reason.message);
  return {
    shot: shot.value,
    info: {
      name: 'clip.avi',
      container: 'avi',
      codec: 'rawvideo',
      width,
      height,
      frameCount: frames.length,
      playbackRate: 30,
      rotation: 0,
      bitDepth: 8,
      pixelAspect: 1,
      hasAudio: false,
      decoder: { name: 'none', why: 'rendered in memory' },
    },
    timestamps: null,
    footageSha256: null,
    audio: null,
  };
}
