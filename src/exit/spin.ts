import type { Quantity } from '../core/estimate';
import { quantity } from '../core/quantity';
import type { Metres } from '../core/units';
import type { Warning } from '../shot/result';
import { combine, entry } from '../uncertainty/budget';

/** How a mark was seen to turn, on the nominal clock. */
export interface SpinInputs {
  /** rad/s, positive from x towards y, and its standard uncertainty from the frames. */
  readonly rate: number;
  readonly u: number;
  readonly dof: number | null;
  /** Other rates that explain the frames about as well, rad/s. */
  readonly others: readonly number[];
  /** Two rates that differ by this give the same frames, rad/s. */
  readonly alias: number;
  /** Relative standard uncertainty of every interval of the clock. */
  readonly clockU: number;
  /** Speed of the flight, m/s, and radius of the ball: they bound what spin is likely. */
  readonly speed: number;
  readonly ballRadius: Metres;
  readonly coverage: number;
}

/** A ball that rolls along the bore turns at speed over radius; this much more is not to be expected. */
const FASTEST_ROLL = 1.2;

/** Rotation in the image plane with its budget; a warning where another rate would explain the film as well. */
export function determineSpin({
  rate,
  u,
  dof,
  others,
  alias,
  clockU,
  speed,
  ballRadius,
  coverage,
}: SpinInputs): { readonly spin: Quantity; readonly warnings: readonly Warning[] } {
  const combined = combine([
    entry('angle of the mark', 'A', u, 'rad/s', 1, dof),
    entry('clock', 'B', clockU, '1', -rate, null),
  ]);
  const likely = (FASTEST_ROLL * speed) / ballRadius;
  const rivals = [...others, rate + alias, rate - alias].filter(
    (other) => Math.abs(other) < Math.max(likely, Math.abs(rate)),
  );
  const spin = quantity(rate, combined.u, combined.dof, coverage);
  if (rivals.length === 0) return { spin, warnings: [] };
  const nearest = rivals.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
  const values = { other: nearest.toFixed(0), rate: rate.toFixed(0) };
  return {
    spin,
    warnings: [
      {
        code: 'spinAmbiguous',
        message: `The mark looks the same in every frame if the ball turns at ${values.other} instead of ${values.rate} rad/s; the slower rate is given.`,
        values,
        remedy:
          'Film at a higher rate, or use a mark that looks the same only after a full turn: a single spot.',
      },
    ],
  };
}
