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
  { integral: slowingLoss(1), weight: 0.35 },
  { integral: slowingLoss(2), weight: 0.35 },
  { integral: gatheringLoss(1.5), weight: 0.3 },
];
/** A film that folds back parts slowly at first. */
export const FOLDING: LossLaws = [
  { integral: slowingLoss(1), weight: 0.25 },
  { integral: gatheringLoss(1.5), weight: 0.35 },
  { integral: gatheringLoss(2.2), weight: 0.4 },
];
/** Time to the full loss, in frame intervals, each as probable. */
const DURATIONS = [0.13, 0.21, 0.33, 0.53, 0.85, 1.36, 2.2, 3.5, 5.6, 9];
/**
 * A tear that starts in what the film has grown since the template costs the template nothing at first: by shares of
 * that growth, and their weights.
 */
const HIDDEN = [
  [0, 0.4],
  [0.5, 0.3],
  [1, 0.3],
] as const;
/** The full loss: some film stays where it was, or is covered by what flies. */
const FULL = [0.35, 0.5, 0.65, 0.8, 1];
/** What the laws leave out, in shares of the film: always, and of the loss. */
const LEAST_U = 0.01;
const LAW_U = 0.05;
/** Later frames say less of how it began: pieces cross, swing back, and dust hides. */
const LATER = 0.6;
/** One frame in so many shows something else altogether. */
const ODD = 0.04;

/** What may be drawn on to explain a signal. */
export interface SignalModel {
  readonly hidden: readonly (readonly [share: number, weight: number])[];
  readonly full: readonly number[];
  /** The signal goes with the share of the exposure to these powers. */
  readonly powers: readonly number[];
  readonly leastU: number;
  readonly lawU: number;
}

export const LOSS: SignalModel = {
  hidden: HIDDEN,
  full: FULL,
  powers: [1],
  leastU: LEAST_U,
  lawU: LAW_U,
};
export const DEPARTURE: SignalModel = {
  hidden: [[0, 1]],
  full: [0.25, 0.5, 0.8, 1.1],
  powers: [1, 2],
  leastU: 0.004,
  lawU: 0.2,
};

/**
 * Likelihood of each burst instant of a grid, given the shares lost frame by frame; nuisances (law, duration, full
 * loss) summed over. Only ratios count.
 */
export function lossLikelihood(
  seen: readonly LossSeen[],
  exposure: number,
  instants: readonly number[],
  openFrom: number,
  laws: LossLaws,
  model: SignalModel = LOSS,
): Float64Array {
  const out = new Float64Array(instants.length);
  instants.forEach((instant, at) => {
    let total = 0;
    for (const { integral, weight } of laws) {
      for (const duration of DURATIONS) {
        for (const [hidden, share] of model.hidden) {
          const shape = seen.map(({ time, since, growth }) => {
            const grown = Math.max(0, growth * (instant - since));
            const start = instant + (hidden * duration * grown) / (1 + grown);
            return exposed(
              integral,
              (time - exposure / 2 - start) / duration,
              (time + exposure / 2 - start) / duration,
            );
          });
          for (const power of model.powers) {
            for (const full of model.full) {
              let product = weight * share;
              for (let i = 0; i < seen.length; i++) {
                const { share: lost, u, time } = seen[i] as LossSeen;
                const expected = full * (shape[i] as number) ** power;
                const later = 1 + LATER * Math.max(0, time - openFrom - 1);
                const law = model.lawU * later * expected;
                const sigma = Math.sqrt(u * u + model.leastU * model.leastU + law * law);
                const z = (lost - expected) / sigma;
                product *= (1 - ODD) * (Math.exp(-0.5 * z * z) / sigma) + ODD;
              }
              total += product;
            }
          }
        }
      }
    }
    out[at] = total;
  });
  return out;
}
