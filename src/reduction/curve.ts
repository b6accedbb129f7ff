import type { ExitReport } from '../exit/exitReport';
import type { Position } from '../shot/result';
import type { FitCurve } from './types';

const SAMPLES = 121;

/** The fitted path from the exit to the last used centre, sampled evenly for drawing. */
export function fitCurve(exit: ExitReport, positions: readonly Position[]): FitCurve {
  const used = positions.filter((position) => position.used).map((position) => position.time);
  const start = Math.min(exit.exitTime.value, ...used);
  const end = Math.max(exit.exitTime.value, ...used);
  const empty = () => new Float64Array(SAMPLES);
  const curve = { times: empty(), s: empty(), sU: empty(), v: empty(), vU: empty() };
  for (let i = 0; i < SAMPLES; i++) {
    const time = start + ((end - start) * i) / (SAMPLES - 1);
    const { s, sU, v, vU } = exit.path.at(time);
    curve.times[i] = time;
    curve.s[i] = s;
    curve.sU[i] = sU;
    curve.v[i] = v;
    curve.vU[i] = vU;
  }
  return curve;
}
