import { failure, type Outcome, success } from '../core/reason';
import { mean, standardDeviation } from '../core/statistics';

export interface Propagated {
  readonly trials: number;
  readonly value: number;
  readonly u: number;
  /** Coverage interval of the kind asked for. */
  readonly interval: readonly [low: number, high: number];
  /** Whether value, u and both ends had settled to the tolerance before the trials ran out. */
  readonly settled: boolean;
}

export interface PropagationOptions {
  readonly coverage: number;
  /** Probabilistically symmetric (JCGM 101:2008, 3.15), as left out, or shortest (3.16). */
  readonly kind?: 'symmetric' | 'shortest';
  /** Wanted numerical tolerance of value, u and ends. */
  readonly tolerance: number;
  readonly blockSize?: number;
  readonly maxTrials?: number;
}

const MOST_LOST = 0.01;

/**
 * Propagation of distributions (JCGM 101:2008, clause 7): `trial` draws every input once and gives the result,
 * or null where it has none. Blocks of trials are run until twice the standard deviation of the mean of each
 * block result is below the tolerance (7.9), or `maxTrials` is reached.
 */
export function propagate(
  trial: () => number | null,
  {
    coverage,
    kind = 'symmetric',
    tolerance,
    blockSize = 2000,
    maxTrials = 20_000,
  }: PropagationOptions,
): Outcome<Propagated> {
  const intervalOf = kind === 'shortest' ? shortestInterval : symmetricInterval;
  const all: number[] = [];
  const blocks: (readonly [number, number, number, number])[] = [];
  let lost = 0;
  let settled = false;
  while (!settled && all.length + lost + blockSize <= maxTrials) {
    const block: number[] = [];
    for (let i = 0; i < blockSize; i++) {
      const result = trial();
      if (result === null) lost++;
      else block.push(result);
    }
    all.push(...block);
    if (lost > MOST_LOST * (all.length + lost)) {
      return failure(
        'trialsWithoutResult',
        `The fit failed in ${lost} of ${all.length + lost} trials of the Monte Carlo check.`,
        'Look at the failed checks of the fit; more frames or a simpler model help.',
        { lost, trials: all.length + lost },
      );
    }
    blocks.push([mean(block), standardDeviation(block), ...intervalOf(block, coverage)]);
    settled =
      blocks.length > 1 &&
      [0, 1, 2, 3].every((k) => {
        const results = blocks.map((b) => b[k] as number);
        return (2 * standardDeviation(results)) / Math.sqrt(blocks.length) < tolerance;
      });
  }
  return success({
    trials: all.length,
    value: mean(all),
    u: standardDeviation(all),
    interval: intervalOf(all, coverage),
    settled,
  });
}

/** Interval that leaves as many values below as above (JCGM 101:2008, 7.7). */
export function symmetricInterval(
  values: readonly number[],
  coverage: number,
): readonly [number, number] {
  const sorted = Float64Array.from(values).sort();
  const inside = Math.floor(coverage * sorted.length + 0.5);
  const low = Math.floor((sorted.length - inside + 1) / 2);
  const at = (rank: number) => sorted[Math.min(sorted.length, Math.max(1, rank)) - 1] as number;
  return [at(low), at(low + inside)];
}

/** The shortest of the intervals that hold as many values (JCGM 101:2008, 7.7.4). */
function shortestInterval(values: readonly number[], coverage: number): readonly [number, number] {
  const sorted = Float64Array.from(values).sort();
  const inside = Math.min(sorted.length - 1, Math.floor(coverage * sorted.length + 0.5));
  const length = (from: number) => (sorted[from + inside] as number) - (sorted[from] as number);
  let best = 0;
  for (let from = 1; from + inside < sorted.length; from++) {
    if (length(from) < length(best)) best = from;
  }
  return [sorted[best] as number, sorted[best + inside] as number];
}

/** Half a unit in the last kept digit of `u` with `digits` significant ones (JCGM 101:2008, 7.9.2). */
export const numericalTolerance = (u: number, digits: 1 | 2): number =>
  u > 0 ? 0.5 * 10 ** (Math.floor(Math.log10(u)) - digits + 1) : 0;

/** Whether two intervals agree at both ends within the tolerance (JCGM 101:2008, 8.1.3). */
export const agrees = (
  budget: readonly [number, number],
  trials: readonly [number, number],
  tolerance: number,
): boolean =>
  Math.abs(budget[0] - trials[0]) <= tolerance && Math.abs(budget[1] - trials[1]) <= tolerance;
