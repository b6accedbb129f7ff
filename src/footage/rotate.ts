import type { FootageInfo } from '../core/film';

export type Rotation = FootageInfo['rotation'];

/** Width and height after a turn. */
export const uprightSize = (
  width: number,
  height: number,
  rotation: Rotation,
): { width: number; height: number } =>
  rotation === 90 || rotation === 270 ? { width: height, height: width } : { width, height };

/**
 * Turns a plane of `width` x `height` samples clockwise. Gives the plane itself where there is
 * nothing to turn, else a new one.
 */
export function turnUpright<Plane extends Uint8Array | Uint16Array>(
  plane: Plane,
  width: number,
  height: number,
  rotation: Rotation,
): Plane {
  if (rotation === 0) return plane;
  const turned = plane.slice() as Plane;
  if (rotation === 180) return turned.reverse() as Plane;
  // A coded row becomes an upright column: the last one at 90, the first one, bottom up, at 270.
  for (let y = 0; y < height; y++) {
    const row = y * width;
    const first = rotation === 90 ? height - 1 - y : (width - 1) * height + y;
    const step = rotation === 90 ? height : -height;
    for (let x = 0; x < width; x++) turned[first + x * step] = plane[row + x] as number;
  }
  return turned;
}

/** A plane of rows of `width` samples with left and right exchanged. */
export function mirrored<Plane extends Uint8Array | Uint16Array>(
  plane: Plane,
  width: number,
): Plane {
  const turned = plane.slice() as Plane;
  for (let row = 0; row < turned.length; row += width) turned.subarray(row, row + width).reverse();
  return turned;
}

/** The nearest whole quarter turn, clockwise, of any angle in degrees. */
export const quarterTurn = (degrees: number): Rotation =>
  ((((Math.round(degrees / 90) * 90) % 360) + 360) % 360) as Rotation;
