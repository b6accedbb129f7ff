import type { FootageInfo } from '../core/film';

export type Levels = FootageInfo['levels'];

/**
 * Grey values of black and white: all the bits hold, or in limited range 16 and 235 for 8 bits and
 * as many times more for each bit beyond (ITU-R BT.601, BT.709).
 */
export function levelsOf(bitDepth: number, isLimited: boolean): Levels {
  if (!isLimited) return { black: 0, white: 2 ** bitDepth - 1 };
  const unit = 2 ** (bitDepth - 8);
  return { black: 16 * unit, white: 235 * unit };
}

/**
 * What a frame tells of its brightest values. A file that says it is limited in range is clipped
 * at its white; one that says nothing may hold more.
 */
export function whitesOf(
  bitDepth: number,
  { white }: Levels,
): { readonly white: number; readonly clipsAt?: number } {
  const most = 2 ** bitDepth - 1;
  return white < most ? { white: most, clipsAt: white } : { white: most };
}
