import type { GreyFrame } from '../core/frame';
import { medianInPlace } from './median';
import type { Background } from './types';

/** Pixels looked at; more only cost time. */
const SAMPLES = 8192;

/** Mean grey level of the static part of a frame over that of the background; 1 where it is dark. */
export function frameGain(frame: GreyFrame, background: Background): number {
  const { data } = frame;
  const { level, white, faulty } = background;
  const stride = Math.max(1, Math.floor(data.length / SAMPLES) | 1);
  const floor = 0.02 * white;
  const ratios = new Float64Array(Math.ceil(data.length / stride));
  let n = 0;
  for (let p = 0; p < data.length; p += stride) {
    const b = level[p] as number;
    if (b > floor && faulty?.[p] !== 1) ratios[n++] = (data[p] as number) / b;
  }
  if (n < 16) return 1;
  const middle = medianInPlace(ratios, n);
  const reach = 0.1 * middle;
  let sum = 0;
  let base = 0;
  for (let p = 0; p < data.length; p += stride) {
    const b = level[p] as number;
    const v = data[p] as number;
    if (b > floor && faulty?.[p] !== 1 && Math.abs(v / b - middle) < reach) {
      sum += v;
      base += b;
    }
  }
  return base > 0 ? sum / base : middle;
}
