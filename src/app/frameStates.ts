import type { Reason } from '../core/reason';
import { residualsOf } from './plotData';
import type { Position, Result, Shot } from './resultTypes';

/** How a frame stands in the result. `rejected`: by a person; `outside`: the ball was not looked for there. */
export type FrameMark = 'used' | 'byHand' | 'refused' | 'rejected' | 'outside';

export interface FrameState {
  readonly frame: number;
  readonly mark: FrameMark;
  /** Why it is left out; null where it is not. */
  readonly why: Reason | null;
}

/** Frames shown before and after those in which the ball was looked for. */
const MARGIN_FRAMES = 3;

function markOf({ used, manual, why }: Position): FrameMark {
  if (used) return manual ? 'byHand' : 'used';
  return why?.code === 'rejectedByHand' ? 'rejected' : 'refused';
}

/** The frames from a little before the first to a little after the last in which the ball was looked for. */
export function frameStates(positions: readonly Position[], frameCount: number): FrameState[] {
  const looked = new Map(positions.map((one) => [one.frame, one]));
  const [first, last] = [positions[0]?.frame, positions.at(-1)?.frame];
  if (first === undefined || last === undefined) return [];
  const from = Math.max(0, first - MARGIN_FRAMES);
  const to = Math.min(frameCount - 1, last + MARGIN_FRAMES);
  return Array.from({ length: to - from + 1 }, (_, i) => {
    const position = looked.get(from + i);
    return position === undefined
      ? { frame: from + i, mark: 'outside', why: null }
      : { frame: from + i, mark: markOf(position), why: position.used ? null : position.why };
  });
}

/** Ways to go through frames. */
export const ROUNDS = ['leftOut', 'poorestFirst', 'looked'] as const;
export type Round = (typeof ROUNDS)[number];

/** The frames of a round in its order; `poorestFirst`: farthest off the fitted path in terms of their uncertainty. */
export function framesOf(round: Round, result: Result): number[] {
  const { positions } = result;
  if (round === 'leftOut') return positions.filter((one) => !one.used).map((one) => one.frame);
  if (round === 'looked') return positions.map((one) => one.frame);
  return residualsOf(result)
    .map(({ frame, residual, u }) => ({ frame, off: u > 0 ? Math.abs(residual) / u : 0 }))
    .sort((a, b) => b.off - a.off)
    .map(({ frame }) => frame);
}

export interface Place {
  /** From 0; null: the frame is none of them. */
  readonly index: number | null;
  readonly previous: number | null;
  readonly next: number | null;
}

/** Where a frame stands among others and which come before and after it; from outside the nearest of each side. */
export function placeAmong(frames: readonly number[], current: number, inOrder: boolean): Place {
  const index = frames.indexOf(current);
  if (index >= 0) {
    return { index, previous: frames[index - 1] ?? null, next: frames[index + 1] ?? null };
  }
  if (!inOrder) return { index: null, previous: null, next: frames[0] ?? null };
  return {
    index: null,
    previous: frames.filter((one) => one < current).at(-1) ?? null,
    next: frames.find((one) => one > current) ?? null,
  };
}

/** Whether a person took the frame out. */
export const isRejected = (edits: Shot['edits'] | undefined, frame: number): boolean =>
  edits?.rejectedFrames.includes(frame) ?? false;
