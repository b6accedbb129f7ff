import type { Orientation } from './types';

export const UPRIGHT: Orientation = { mirrored: false, rotation: 0 };

/** By the number that TIFF 6.0 (section 8) and Exif 2.3 (4.6.4 A) give it, from 1. */
const ORIENTATIONS: readonly Orientation[] = [
  UPRIGHT,
  { mirrored: true, rotation: 0 },
  { mirrored: false, rotation: 180 },
  { mirrored: true, rotation: 180 },
  { mirrored: true, rotation: 270 },
  { mirrored: false, rotation: 90 },
  { mirrored: true, rotation: 90 },
  { mirrored: false, rotation: 270 },
];

/** A number that is left out or has no meaning leaves the image as it is coded. */
export const orientationOf = (number: number | undefined): Orientation =>
  ORIENTATIONS[(number ?? 1) - 1] ?? UPRIGHT;
