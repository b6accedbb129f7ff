import { createMeasurer } from '../../../src/reduction/measurer';
import { reduceShot } from '../../../src/reduction/reduceShot';
import type { Position, Result } from '../../../src/shot/result';
import type { ClutteredFilm } from './film';
import { inputsOf, supplyOf } from './inputs';
import type { Kind } from './kinds';

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

async function reduceFilm(film: ClutteredFilm): Promise<Result> {
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
