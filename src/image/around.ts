import type { GreyFrame } from '../core/frame';
import type { ImagePoint, Pixels } from '../core/units';
import type { Shape } from './ballShape';
import { bandWidth } from './discPixels';
import { SIGMA_PRIOR } from './discPriors';
import type { BallModel } from './types';

/** Half-width of the soft edge by the learnt softness, or that expected, px. */
export const softEdge = ({ look }: BallModel): Pixels =>
  bandWidth({ sigma: look?.sigma ?? SIGMA_PRIOR.value });

/**
 * Visits the pixels of a disc at `middle` and of a ring `width` px wide around its soft edge, row by row: index, place
 * from the middle in ball coordinates, and how far beyond the soft edge, px; that may be negative.
 */
export function visitAround(
  frame: Pick<GreyFrame, 'width' | 'height'>,
  [mx, my]: ImagePoint,
  ball: BallModel,
  [a, b, c, d]: Shape,
  width: Pixels,
  visit: (p: number, qx: number, qy: number, beyond: Pixels) => void,
): void {
  const { radius, blur } = ball;
  const band = softEdge(ball);
  // The shape stretches by a few per cent at most.
  const halfX = Math.ceil(1.08 * radius + Math.abs(blur[0]) / 2 + band + width);
  const halfY = Math.ceil(1.08 * radius + Math.abs(blur[1]) / 2 + band + width);
  const x0 = Math.max(0, Math.floor(mx) - halfX);
  const x1 = Math.min(frame.width - 1, Math.ceil(mx) + halfX);
  const y0 = Math.max(0, Math.floor(my) - halfY);
  const y1 = Math.min(frame.height - 1, Math.ceil(my) + halfY);
  for (let y = y0; y <= y1; y++) {
    for (let x = x0; x <= x1; x++) {
      const qx = a * (x - mx) + b * (y - my);
      const qy = c * (x - mx) + d * (y - my);
      const r = Math.sqrt(qx * qx + qy * qy);
      const spread = r > 0 ? Math.abs(qx * blur[0] + qy * blur[1]) / (2 * r) : 0;
      const beyond = r - radius - spread - band;
      if (beyond <= width) visit(y * frame.width + x, qx, qy, beyond);
    }
  }
}
