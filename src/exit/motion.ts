/**
 * The ball's motion along the flight axis after the muzzle plane (s = 0), in four parameters:
 * exit time t0, exit speed v0, drag k (1/m; the deceleration at the exit is k v0^2) and the share z of its speed
 * that the ball loses in the muzzle zone besides drag.
 *
 * The zone's extra deceleration falls either in a straight line from the muzzle plane to nothing at its end, a length
 * L on, or exponentially, with 95 % of the loss within L (a decay length of L / 3). Its effect is added to first
 * order: in a straight line, with u = v0 (t - t0) / L, the ball is z L F(u) behind, F(u) = u^2 - u^3/3 up to u = 1 and
 * u - 1/3 beyond; in a tail, with u = 3 v0 (t - t0) / L, z L (u - 1 + exp(-u)) / 3. Far from the muzzle both are
 * z (s - L/3). Terms left out are z^2 and z k L, under 1e-4 of the distance.
 *
 * Bore and flight together are quadratic drag past the muzzle plane and, before it, a constant acceleration a in the
 * bore that leaves the ball at the muzzle plane with v0: place and speed are continuous there.
 */
export type Motion = 'uniform' | 'constantAcceleration' | 'quadraticDrag' | 'boreAndFlight';

/** How the muzzle zone slows the ball, and its length L, m. */
export interface Zone {
  readonly shape: 'straight' | 'tail';
  readonly length: number;
}

/** Places of the parameters in a vector. */
export const T0 = 0;
export const V0 = 1;
export const DRAG = 2;
export const LOSS = 3;
export const BORE = 4;
export const PARAMETERS = 5;

/** Position and its derivatives by the parameters, filled in by `moveTo`; one object is used over and over. */
export interface Moved {
  s: number;
  v: number;
  byT0: number;
  byV0: number;
  byDrag: number;
  byLoss: number;
  byBore: number;
}

export const nowhere = (): Moved => ({
  s: 0,
  v: 0,
  byT0: 0,
  byV0: 0,
  byDrag: 0,
  byLoss: 0,
  byBore: 0,
});

/** Below this k v0 t the logarithm is summed as a series: its terms lose no digits there. */
const SERIES = 1e-4;

/** log(1 + w) / w. */
const logRatio = (w: number): number =>
  Math.abs(w) < SERIES ? 1 - w * (1 / 2 - w * (1 / 3 - w / 4)) : Math.log1p(w) / w;

/** Distance without a muzzle zone after `run` = v0 (t - t0), with drag k. */
function freeDistance(motion: Motion, run: number, k: number): number {
  if (motion === 'uniform') return run;
  const w = k * run;
  return motion === 'constantAcceleration' ? run * (1 - w / 2) : run * logRatio(w);
}

/** How far a loss of the whole speed would have the ball behind after `run`, to first order. */
function lagOf({ shape, length }: Zone, run: number): number {
  if (run <= 0) return 0;
  if (shape === 'tail') {
    const decay = length / 3;
    return run - decay * (1 - Math.exp(-run / decay));
  }
  const u = run / length;
  return u > 1 ? run - length / 3 : run * u * (1 - u / 3);
}

/** Distances at `times`, s; `theta` holds t0, v0, k, z, a. */
export function placesAt(
  motion: Motion,
  theta: Float64Array,
  zone: Zone,
  times: Float64Array,
  out: Float64Array,
): void {
  const t0 = theta[T0] as number;
  const v0 = theta[V0] as number;
  const k = theta[DRAG] as number;
  const z = theta[LOSS] as number;
  for (let i = 0; i < times.length; i++) {
    const tau = (times[i] as number) - t0;
    const run = v0 * tau;
    if (motion === 'boreAndFlight' && tau < 0) {
      out[i] = run + ((theta[BORE] as number) * tau * tau) / 2;
      continue;
    }
    const free = freeDistance(motion, run, k);
    out[i] = z === 0 ? free : free - z * lagOf(zone, run);
  }
}

/** State at time `t`; `theta` holds t0, v0, k, z, a. */
export function moveTo(
  motion: Motion,
  theta: Float64Array,
  zone: Zone,
  t: number,
  out: Moved,
): void {
  const tau = t - (theta[T0] as number);
  const v0 = theta[V0] as number;
  const k = theta[DRAG] as number;
  const z = theta[LOSS] as number;
  const run = v0 * tau;
  const w = k * run;
  out.byBore = 0;
  if (motion === 'boreAndFlight' && tau < 0) {
    const a = theta[BORE] as number;
    out.s = run + (a * tau * tau) / 2;
    out.v = v0 + a * tau;
    out.byT0 = -out.v;
    out.byV0 = tau;
    out.byDrag = 0;
    out.byLoss = 0;
    out.byBore = (tau * tau) / 2;
    return;
  }
  out.s = freeDistance(motion, run, k);
  if (motion === 'uniform') {
    out.v = v0;
    out.byV0 = tau;
    out.byDrag = 0;
  } else if (motion === 'constantAcceleration') {
    out.v = v0 * (1 - w);
    out.byV0 = tau * (1 - w);
    out.byDrag = (-run * run) / 2;
  } else {
    const slow = 1 / (1 + w);
    const slope =
      Math.abs(w) < SERIES ? -1 / 2 + w * (2 / 3 - (3 * w) / 4) : (slow - logRatio(w)) / w;
    out.v = v0 * slow;
    out.byV0 = tau * slow;
    out.byDrag = run * run * slope;
  }
  const behind = lagOf(zone, run);
  const slowed = slowedBy(zone, run);
  out.s -= z * behind;
  out.v -= z * v0 * slowed;
  out.byV0 -= z * tau * slowed;
  out.byLoss = -behind;
  out.byT0 = -out.v;
}

/** Share of the loss that has been taken after `run`: the slope of `lagOf`. */
function slowedBy({ shape, length }: Zone, run: number): number {
  if (run <= 0) return 0;
  if (shape === 'tail') return 1 - Math.exp((-3 * run) / length);
  const u = Math.min(1, run / length);
  return u * (2 - u);
}
