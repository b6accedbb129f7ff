import { median } from '../core/statistics';
import type { FitEvidence } from './types';

/** Of frames that scatter more than this many times the usual, something else is the matter. */
const MOST_INFLATION = 3;

/** Pools the arcs' pulls: their scatter about their mean over the frames is noise, the mean is the model's fault. */
export function learnScatter(frames: readonly FitEvidence[]): {
  readonly inflation: number;
  readonly unmodelled: readonly [number, number];
} {
  const usual = median(frames.map(({ inflation }) => inflation));
  const kept = frames.filter(({ inflation }) => inflation <= MOST_INFLATION * usual);
  const n = kept.length;
  const cells = kept[0]?.pull.length ?? 0;
  const unmodelled: [number, number] = [0, 0];
  let ratio = 0;
  for (let axis = 0; axis < 2; axis++) {
    let scatter = 0;
    let expected = 0;
    let common = 0;
    for (let i = (axis * cells) / 2; i < ((axis + 1) * cells) / 2; i++) {
      let sum = 0;
      let squares = 0;
      for (const frame of kept) {
        const pull = frame.pull[i] as number;
        sum += pull;
        squares += pull * pull;
        expected += (frame.expected[i] as number) / n;
      }
      const variance = (squares - (sum * sum) / n) / (n - 1);
      scatter += variance;
      common += (sum / n) ** 2 - variance / n;
    }
    // The pattern's own uncertainty moves all frames alike.
    const byShade = median(kept.map((frame) => frame.byShade[axis] as number)) / n;
    unmodelled[axis] = Math.max(0, common) + byShade;
    ratio += expected > 0 ? scatter / expected / 2 : 0.5;
  }
  return { inflation: ratio, unmodelled };
}
