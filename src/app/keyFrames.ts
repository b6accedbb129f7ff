import type { Clock } from '../clock/clock';
import { isAvailable } from '../core/estimate';
import type { ImagePoint, ImageRect } from '../core/units';
import type { Position, Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import { frameAtTime } from './frameAtTime';

/** A frame that shows what the result says, and what to look at in it. */
export interface KeyFrame {
  readonly kind: 'whole' | 'open' | 'exit';
  readonly frame: number;
  /** The ball's outline there; null where its centre was not found. */
  readonly ball: { readonly centre: ImagePoint; readonly radius: number } | null;
}

/** Half the width of the part of a frame around the muzzle that is shown, in ball radii; and its height over its width. */
const HALF_WIDTH_RADII = 5;
const HEIGHT_SHARE = 0.6;

/** Last frame with the seal whole, first with it open, and the frame nearest to the exit; those there are. */
export function keyFramesOf(
  result: Result,
  shot: Shot,
  clock: Clock | null,
  frameCount: number,
): readonly KeyFrame[] {
  const { sealBurst, exitTime } = result;
  const radius = radiusOf(result, shot);
  const keyed = (kind: KeyFrame['kind'], frame: number): KeyFrame => ({
    kind,
    frame,
    ball: ballIn(
      result.positions.find((one) => one.frame === frame),
      radius,
    ),
  });
  const burst =
    'between' in sealBurst
      ? [keyed('whole', sealBurst.between[0]), keyed('open', sealBurst.between[1])]
      : [];
  if (!isAvailable(exitTime) || shot.muzzle === null || clock === null) return burst;
  const [x, y] = shot.muzzle.point;
  const exit = Math.round(frameAtTime(clock, frameCount, exitTime.value, x, y));
  return [...burst, ...(exit >= 0 && exit < frameCount ? [keyed('exit', exit)] : [])];
}

/** Radius of the ball in the image, px. */
const radiusOf = ({ scale }: Result, { ball }: Shot): number =>
  ball.diameter.value / 2 / scale.value;

const ballIn = (position: Position | undefined, radius: number): KeyFrame['ball'] =>
  position === undefined || position.x === null || position.y === null
    ? null
    : { centre: [position.x, position.y], radius };

/** The part of a frame around the muzzle, in whole pixels within the image; the whole frame where no muzzle is stated. */
export function muzzleRect(
  result: Result,
  shot: Shot,
  image: { readonly width: number; readonly height: number },
): ImageRect {
  if (shot.muzzle === null) return [0, 0, image.width, image.height];
  const [x, y] = shot.muzzle.point;
  const half = HALF_WIDTH_RADII * radiusOf(result, shot);
  const width = Math.min(Math.max(Math.round(2 * half), 8), image.width);
  const height = Math.min(Math.max(Math.round(2 * half * HEIGHT_SHARE), 8), image.height);
  const from = (middle: number, size: number, limit: number) =>
    Math.min(Math.max(Math.round(middle - size / 2), 0), limit - size);
  return [from(x, width, image.width), from(y, height, image.height), width, height];
}
