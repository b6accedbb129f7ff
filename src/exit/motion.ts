/**
 * The ball's motion along the flight axis after the muzzle plane (s = 0), in four parameters:
 * exit time t0, exit speed v0, drag k (1/m; the deceleration at the exit is k v0^2) and the share z of its speed
 * that the ball loses in the muzzle zone besides drag.
 *
 * The zone's extra deceleration falls in a straight line from the muzzle plane to nothing at its end, a length L on.
 * Its effect is added to first order: with u = v0 (t - t0) / L the ball is z L F(u) behind, F(u) = u^2 - u^3/3 up
 * to u = 1 and u - 1/3 beyond. Terms left out are z^2 and z k L, under 1e-4 of the distance.
 */
export type Motion = 'uniform' | 'constantAcceleration' | 'quadraticDrag';

/** Places of the parameters in a vector. */
export const T0 = 0;
export const V0 = 1;
export const DRAG = 2;
export const LOSS = 3;
export const PARAMETERS = 4;

/** Position and its derivatives by the parameters, filled in by `moveTo`; one object is used over and over. */
export interface Moved {
  s: number;
  v: number;
  byT0: number;
  byV0: number;
  byDrag: number;
  byLoss: number;
}

export const nowhere = (): Moved => ({ s: 0, v: 0, byT0: 0, byV0: 0, byDrag: 0, byLoss: 0 });

/** Below this k v0 t the logarithm is summed as a series: its terms lose no digits there. */
const SERIES = 1e-4;

/** State at time `t`; `theta` holds t0, v0, k, z; `zone` is L in metres. */
export function moveTo(
  motion: Motion,
  theta: Float64Array,
  zone: number,
  t: number,
  out: Moved,
): void {
  const tau = t - (theta[T0] as number);
  const v0 = theta[V0] as number;
  const k = theta[DRAG] as number;
  const z = theta[LOSS] as number;
  const run = v0 * tau;
  const w = k * run;
  if (motion === 'uniform') {
    out.s = run;
    out.v = v0;
    out.byV0 = tau;
    out.byDrag = 0;
  } else if (motion === 'constantAcceleration') {
    out.s = run * (1 - w / 2);
    out.v = v0 * (1 - w);
    out.byV0 = tau * (1 - w);
    out.byDrag = (-run * run) / 2;
  } else {
    const slow = 1 / (1 + w);
    // log(1 + w) / w and its derivative.
    const ratio = Math.abs(w) < SERIES ? 1 - w * (1 / 2 - w * (1 / 3 - w / 4)) : Math.log1p(w) / w;
    const slope = Math.abs(w) < SERIES ? -1 / 2 + w * (2 / 3 - (3 * w) / 4) : (slow - ratio) / w;
    out.s = run * ratio;
    out.v = v0 * slow;
    out.byV0 = tau * slow;
    out.byDrag = run * run * slope;
  }
  const u = run / zone;
  const inside = Math.min(Math.max(u, 0), 1);
  const behind = u > 1 ? u - 1 / 3 : inside * inside * (1 - inside / 3);
  const slowed = inside * (2 - inside);
  out.s -= z * zone * behind;
  out.v -= z * v0 * slowed;
  out.byV0 -= z * tau * slowed;
  out.byLoss = -zone * behind;
  out.byT0 = -out.v;
}
