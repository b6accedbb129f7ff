import type { GreyFrame } from '../core/frame';
import type { ImagePoint, ImageRect } from '../core/units';
import { inverseOf } from './ballShape';
import { type Examination, examineCentre } from './centre';
import type { DiscFit } from './discFit';
import { DiscModel } from './discModel';
import { bandWidth, CORE } from './discPixels';
import { finalCut, weightOf } from './discSettle';
import { RAYS, sectorOf } from './outline';
import type { Background, BallModel, FrameInspection } from './types';

/** One frame's fit near `at`, laid open; also of a refused frame, as far as a fit came about. */
export function inspectCentre(
  frame: GreyFrame,
  background: Background,
  at: ImagePoint,
  ball: BallModel,
): FrameInspection {
  const examined = examineCentre(frame, background, at, ball);
  const { fit, measurement } = examined;
  const rect = rectAround(frame, fit === null ? at : [fit.disc.x, fit.disc.y], ball);
  if (fit === null) {
    return {
      frame: frame.index,
      rect,
      measurement,
      model: null,
      residual: null,
      weight: null,
      outline: [],
    };
  }
  return {
    frame: frame.index,
    rect,
    measurement,
    ...planes(frame, rect, examined, fit),
    outline: outlineOf(examined, fit),
  };
}

function rectAround({ width, height }: GreyFrame, [x, y]: ImagePoint, ball: BallModel): ImageRect {
  const reach = Math.ceil(1.6 * ball.radius + Math.hypot(...ball.blur) / 2 + 6);
  const from = (middle: number, size: number) =>
    Math.max(0, Math.min(size - 1, Math.round(middle) - reach));
  const to = (middle: number, size: number) =>
    Math.max(1, Math.min(size, Math.round(middle) + reach + 1));
  const left = from(x, width);
  const top = from(y, height);
  return [left, top, Math.max(1, to(x, width) - left), Math.max(1, to(y, height) - top)];
}

/** Fitted picture, residuals and weights of all pixels of the rectangle. */
function planes(
  frame: GreyFrame,
  [left, top, width, height]: ImageRect,
  { ball, shape, gain, behind }: Examination,
  { disc, shading, seen, contrast, noiseRatio }: DiscFit,
): Pick<FrameInspection, 'model' | 'residual' | 'weight'> {
  const { level, noise, white, faulty } = behind;
  const [a, b, c, d] = shape;
  const picture = new DiscModel(shape, ball.blur, shading);
  const gradient = new Float64Array(picture.parameters);
  const model = new Float32Array(width * height);
  const residual = new Float32Array(width * height);
  const weight = new Float32Array(width * height);
  for (let r = 0; r < height; r++) {
    for (let k = 0; k < width; k++) {
      const x = left + k;
      const y = top + r;
      const p = y * frame.width + x;
      const q = r * width + k;
      const value = picture.at(x, y, gain * (level[p] as number), disc, gradient, 0);
      const shown = Math.min(white, value);
      const sigma = Math.sqrt(noise.readVariance + noise.gain * Math.max(0, shown));
      const off = (frame.data[p] as number) - shown;
      model[q] = shown;
      residual[q] = off / sigma;
      const ox = x - disc.x;
      const oy = y - disc.y;
      const qx = a * ox + b * oy;
      const qy = c * ox + d * oy;
      const sector = sectorOf(qx, qy);
      const distance = Math.hypot(qx, qy);
      const spread = Math.abs(qx * ball.blur[0] + qy * ball.blur[1]) / (2 * Math.max(1, distance));
      const within = distance - spread < disc.radius + bandWidth(disc);
      const counts = seen[sector] === 1 || distance < CORE * disc.radius;
      if (!within) weight[q] = -1;
      else if (counts && faulty?.[p] !== 1 && value < white) {
        weight[q] = weightOf(off, finalCut(sigma, contrast, noiseRatio));
      }
    }
  }
  return { model, residual, weight };
}

/** The fitted outline in the middle of the exposure, a point a sector. */
function outlineOf({ shape }: Examination, { disc, seen }: DiscFit): FrameInspection['outline'] {
  const [a, b, c, d] = inverseOf(shape);
  return Array.from({ length: RAYS }, (_, k) => {
    const angle = (2 * Math.PI * k) / RAYS;
    const x = disc.radius * Math.cos(angle);
    const y = disc.radius * Math.sin(angle);
    return { at: [disc.x + a * x + b * y, disc.y + c * x + d * y], seen: seen[k] === 1 };
  });
}
