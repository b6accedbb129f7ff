import type { ImageVector } from './units';

/** The vector of length 1 in the same direction; the given vector must have a length. */
export function unitVector([x, y]: ImageVector): ImageVector {
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}
