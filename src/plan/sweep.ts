import type { Cancellation } from '../core/cancellation';
import type { Outcome } from '../core/reason';
import type { FramesPerSecond, Metres } from '../core/units';
import type { CameraTrade, Plan } from '../shot/planning';
import { pictureAt } from './camera';
import { blockingCheck } from './checks';
import { type Expectation, expectShot } from './expect';

/** Rates against fields of view, each rising. */
export interface SweepQuestion {
  readonly plan: Plan;
  readonly trade: CameraTrade;
  readonly rates: readonly FramesPerSecond[];
  readonly fields: readonly Metres[];
}

export interface SweepCell {
  readonly rate: FramesPerSecond;
  readonly across: Metres;
  /** The plan there; null: the camera cannot. */
  readonly plan: Plan | null;
  readonly told: Outcome<Expectation>;
}

export interface Sweep {
  readonly rates: readonly FramesPerSecond[];
  readonly fields: readonly Metres[];
  /** Row by row, a row a field of view. */
  readonly cells: readonly SweepCell[];
  /** The cell of least uncertainty; null: none can be filmed. */
  readonly best: number | null;
}

/** Films drawn for a cell; the same ones in all cells, so that neighbours differ by their settings alone. */
const DRAWS = 4;
/** Share of a frame interval for which a shutter can be open at most. */
const MOST_OPEN = 0.95;
/** A known length longer than this share of the view gives way to one that fits. */
const LONGEST_IN_VIEW = 0.9;

/**
 * What a plan would give at other rates and fields of view, the camera taking the largest picture it can and the light
 * staying as planned: where the exposure no longer fits into a frame it is cut, and the picture darkens.
 */
export function sweep(
  { plan, trade, rates, fields }: SweepQuestion,
  onShare?: (share: number) => void,
  cancellation?: Cancellation,
): Sweep {
  const cells: SweepCell[] = [];
  for (const across of fields) {
    for (const rate of rates) {
      cancellation?.throwIfAborted();
      cells.push(cellAt(plan, trade, rate, across));
      onShare?.(cells.length / (fields.length * rates.length));
    }
  }
  return { rates, fields, cells, best: leastUncertain(cells) };
}

function cellAt(plan: Plan, trade: CameraTrade, rate: FramesPerSecond, across: Metres): SweepCell {
  const picture = pictureAt(trade, rate, across, plan.ball.diameter.value);
  if (!picture.ok) return { rate, across, plan: null, told: picture };
  const there = planAt(plan, rate, across, picture.value);
  const blocked = blockingCheck(there);
  return {
    ...{ rate, across, plan: there },
    told: blocked === null ? expectShot(there, DRAWS) : { ok: false, reason: blocked },
  };
}

function planAt(
  plan: Plan,
  rate: FramesPerSecond,
  across: Metres,
  picture: { readonly width: number; readonly height: number },
): Plan {
  const { camera, scale } = plan;
  const share = rate / camera.rate.value;
  const open = Math.min(1, MOST_OPEN / rate / camera.exposure.value);
  const length = Math.min(scale.length.value, LONGEST_IN_VIEW * across);
  return {
    ...plan,
    camera: {
      ...camera,
      ...picture,
      rate: { value: rate, u: camera.rate.u * share },
      exposure: { value: camera.exposure.value * open, u: camera.exposure.u * open },
    },
    view: { ...plan.view, across },
    scale: { ...scale, length: { ...scale.length, value: length } },
  };
}

function leastUncertain(cells: readonly SweepCell[]): number | null {
  let best: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, { told }] of cells.entries()) {
    if (!told.ok || told.value.speedU >= least) continue;
    least = told.value.speedU;
    best = i;
  }
  return best;
}
