import { exposed, gatheringLoss, slowingLoss } from './growthLaws';
import type { Loss } from './opening';

/** The share of the film lost, as a frame shows it; times in frame intervals. */
export interface LossSeen extends Loss {
  /** Middle of the exposure. */
  readonly time: number;
  /** When the film was as the loss is counted from, and the share of its height it grew an interval after that. */
  readonly since: number;
  readonly growth: number;
}

/** Laws the loss may follow, with how probable each is taken to be. */
export type LossLaws = readonly {
  readonly integral: (t: number) => number;
  readonly weight: number;
}[];
/** Pieces that fly off leave a gap at once. */
export const FLYING: LossLaws = [
  { integral: slowingLoss(1), weight: 0.45 },
  { integral: slowingLoss(2), weight: 0.35 },
  { integral: gatheringLoss(1.5), weight: 0.2 },
];
/** A film that folds back parts slowly at first. */
export const FOLDING: LossLaws = [
  { integral: slowingLoss(1), weight: 0.25 },
  { integral: gatheringLoss(1.5), weight: 0.35 },
  { integral: gatheringLoss(2.2), weight: 0.4 },
];
/** Time the tear takes, in frame intervals. */
export const DURATIONS = [0.13, 0.21, 0.33, 0.53, 0.85, 1.36, 2.2, 3.5, 5.6, 9];
/** How probable each is, up to a factor: a film is fast enough to show the tear and no faster than it needs (judgement, no source). */
export const DURATION_WEIGHTS = [0.12, 0.25, 0.5, 0.8, 1, 1, 0.7, 0.4, 0.2, 0.1];
/**
 * A tear that starts in what the film has grown since the template costs the template nothing at first: by shares of
 * that growth, whether what is left of the film grows on, and their weights.
 */
const HIDDEN = [
  { share: 0, on: 0, weight: 0.5 },
  { share: 0.5, on: 0, weight: 0.2 },
  { share: 1, on: 0, weight: 0.2 },
  { share: 1, on: 1, weight: 0.1 },
] as const;
/** The full loss: some film stays where it was, or is covered by what flies. */
const FULL = [0.2, 0.35, 0.5, 0.65, 0.8, 1];
/** What the laws leave out, in shares of the film: always, and of the loss. */
const LEAST_U = 0.01;
const LAW_U = 0.05;
/** Later frames say less of how it began: pieces cross, swing back, and dust hides. */
const LATER = 0.6;
/** One frame in so many shows something else altogether. */
const ODD = 0.04;

/**
 * Likelihood of each burst instant of a grid, given the shares lost frame by frame, the film taking `duration` frame
 * intervals to its full loss; law, start and full loss summed over. Only ratios count.
 */
export function lossLikelihood(
  seen: readonly LossSeen[],
  exposure: number,
  instants: readonly number[],
  openFrom: number,
  laws: LossLaws,
  duration: number,
): Float64Array {
  const own = seen.map(({ u, time }) => ({
    variance: u * u + LEAST_U * LEAST_U,
    law: LAW_U * (1 + LATER * Math.max(0, time - openFrom - 1)),
  }));
  return Float64Array.from(instants, (instant) => {
    let total = 0;
    for (const { integral, weight } of laws) {
      for (const { share, on, weight: chance } of HIDDEN) {
        const shape = seen.map(({ time, since, growth }) => {
          const start = instant + hiddenFor(share, on, duration, growth, instant - since);
          return exposed(
            integral,
            (time - exposure / 2 - start) / duration,
            (time + exposure / 2 - start) / duration,
          );
        });
        for (const full of FULL) {
          let product = weight * chance;
          for (let i = 0; i < seen.length; i++) {
            const { variance, law } = own[i] as (typeof own)[number];
            const expected = full * (shape[i] as number);
            const sigma = Math.sqrt(variance + (law * expected) ** 2);
            const z = ((seen[i] as LossSeen).share - expected) / sigma;
            product *= (1 - ODD) * (Math.exp(-0.5 * z * z) / sigma) + ODD;
          }
          total += product;
        }
      }
    }
    return total;
  });
}

/** How long a tear stays in what the film has grown in `elapsed` intervals, and grows `on` after. */
function hiddenFor(
  share: number,
  on: number,
  duration: number,
  growth: number,
  elapsed: number,
): number {
  let hidden = 0;
  for (let i = 0; i < (share > 0 ? 1 + 5 * on : 0); i++) {
    const grown = Math.max(0, growth * (elapsed + on * hidden));
    hidden = (share * duration * grown) / (1 + grown);
  }
  return hidden;
}
