import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Metres, MetresPerPixel, Pixels } from '../core/units';
import type { KnownLength, Scale } from '../shot/schema';
import type { MeasuredPoint, View } from './view';

/** What one known length alone gives: metres per flat pixel, and shares of it that it is not known to. */
export interface OneLength {
  readonly value: MetresPerPixel;
  readonly pixels: Pixels;
  readonly relativeU: number;
  readonly lengthU: number;
  readonly endpointU: number;
  readonly depthU: number;
  /** Change for one standard uncertainty of the camera distance, signed. */
  readonly byDistance: number;
}

/**
 * The scale by one known length, numbered for messages.
 * Failures: `zeroLength`, `lengthTooUncertain`, `outsideLens`, `beyondHorizon`.
 */
export function oneLength(
  length: KnownLength,
  number: number,
  scale: Scale,
  view: View,
): Outcome<OneLength> {
  const span = spanOf(length, number, view);
  if (!span.ok) return span;
  const { pixels, endpointU } = span.value;
  const behind: Metres = length.depthOffset;
  const distance = distanceFrom(length, pixels, scale, view);
  const parallax = distance === null ? 1 : distance.value / (distance.value + behind);
  const lengthU = length.u / length.length;
  const depthU = distance === null ? 0 : length.depthOffsetU / (distance.value + behind);
  const byDistance =
    distance === null ? 0 : (behind * distance.u) / (distance.value * (distance.value + behind));
  const relativeU = Math.hypot(lengthU, endpointU, depthU, byDistance);
  if (!(relativeU < 1)) {
    return failure(
      'lengthTooUncertain',
      `Known length ${number} is stated with an uncertainty as large as itself.`,
      'Check the uncertainties of the length, its ends, its depth and the camera distance.',
      { number },
    );
  }
  return success({
    value: (length.length / pixels) * parallax,
    pixels,
    relativeU,
    lengthU,
    endpointU,
    depthU,
    byDistance,
  });
}

/** Flat pixels between the ends of a length, and their relative uncertainty from both ends. */
export function spanOf(
  { from, to, endpointU }: KnownLength,
  number: number,
  view: View,
): Outcome<{ readonly pixels: Pixels; readonly endpointU: number }> {
  const ends: MeasuredPoint[] = [];
  for (const [x, y] of [from, to]) {
    const variance = endpointU ** 2;
    const end = view.flattenMeasured({ x, y, varX: variance, varY: variance, covXY: 0 });
    if (!end.ok) return end;
    ends.push(end.value);
  }
  const [a, b] = ends as [MeasuredPoint, MeasuredPoint];
  const pixels = Math.hypot(b.x - a.x, b.y - a.y);
  if (pixels < 1) {
    return failure(
      'zeroLength',
      `Known length ${number} has its two ends on the same pixel.`,
      'Drag its two ends apart, onto the two marks.',
      { number },
    );
  }
  const ux = (b.x - a.x) / pixels;
  const uy = (b.y - a.y) / pixels;
  const along = ({ varX, varY, covXY }: MeasuredPoint) =>
    ux * ux * varX + uy * uy * varY + 2 * ux * uy * covXY;
  return success({ pixels, endpointU: Math.sqrt(along(a) + along(b)) / pixels });
}

/** Lens to flight line: as measured, or where the focal length is known better, from the length's own size in the picture. */
function distanceFrom(
  { length, depthOffset }: KnownLength,
  pixels: Pixels,
  { lens, cameraDistance }: Scale,
  { camera }: View,
): Estimate | null {
  if (camera === null || lens === null) return cameraDistance;
  const toLength = (camera.offset * length) / pixels;
  return {
    value: toLength - depthOffset,
    u: (toLength * lens.focal.u) / lens.focal.value,
  };
}
