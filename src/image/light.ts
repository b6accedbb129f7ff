import type { GreyFrame } from '../core/frame';
import { median } from '../core/statistics';
import type { ImagePoint } from '../core/units';
import type { Background, BallModel } from './types';

/** Ratio of the frame's level to the background's around the ball; 1 where it cannot be told. */
export function localGain(
  frame: GreyFrame,
  { level, white, faulty }: Background,
  [x, y]: ImagePoint,
  { radius, blur }: BallModel,
): number {
  const inner = 1.5 * radius + Math.hypot(blur[0], blur[1]) / 2;
  const outer = inner + Math.max(8, 0.7 * radius);
  const ratios: number[] = [];
  const y0 = Math.max(0, Math.ceil(y - outer));
  const y1 = Math.min(frame.height - 1, Math.floor(y + outer));
  const x0 = Math.max(0, Math.ceil(x - outer));
  const x1 = Math.min(frame.width - 1, Math.floor(x + outer));
  for (let py = y0; py <= y1; py += 2) {
    for (let px = x0; px <= x1; px += 2) {
      const r = Math.hypot(px - x, py - y);
      if (r < inner || r > outer) continue;
      const p = py * frame.width + px;
      if (faulty !== undefined && faulty[p] === 1) continue;
      const b = level[p] as number;
      if (b > 0.03 * white) ratios.push((frame.data[p] as number) / b);
    }
  }
  if (ratios.length < 100) return 1;
  const gain = median(ratios);
  // A larger change is something in the way, not the light.
  return gain > 0.8 && gain < 1.25 ? gain : 1;
}

/** Share of the disc's pixels at the largest grey value that light can reach. */
export function saturatedShare(frame: GreyFrame, [x, y]: ImagePoint, radius: number): number {
  let at = 0;
  let all = 0;
  const r = 0.9 * radius;
  const most = frame.clipsAt ?? frame.white;
  for (let py = Math.max(0, Math.ceil(y - r)); py <= Math.min(frame.height - 1, y + r); py++) {
    for (let px = Math.max(0, Math.ceil(x - r)); px <= Math.min(frame.width - 1, x + r); px++) {
      if (Math.hypot(px - x, py - y) > r) continue;
      all++;
      if ((frame.data[py * frame.width + px] as number) >= most) at++;
    }
  }
  return all > 0 ? at / all : 0;
}
