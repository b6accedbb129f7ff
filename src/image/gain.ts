import type { GreyFrame } from '../core/frame';
import { median } from '../core/statistics';
import type { Background } from './types';

/** Mean grey level of the static part of a frame over that of the background; 1 where it is dark. */
export function frameGain(frame: GreyFrame, background: Background): number {
  const stride = Math.max(1, Math.floor(frame.data.length / 8192) | 1);
  const floor = 0.02 * background.white;
  const ratios: number[] = [];
  for (let p = 0; p < frame.data.length; p += stride) {
    const b = background.level[p] as number;
    if (b > floor) ratios.push((frame.data[p] as number) / b);
  }
  if (ratios.length < 16) return 1;
  const middle = median(ratios);
  let sum = 0;
  let base = 0;
  for (let p = 0; p < frame.data.length; p += stride) {
    const b = background.level[p] as number;
    const v = frame.data[p] as number;
    if (b > floor && Math.abs(v / b - middle) < 0.1 * middle) {
      sum += v;
      base += b;
    }
  }
  return base > 0 ? sum / base : middle;
}
