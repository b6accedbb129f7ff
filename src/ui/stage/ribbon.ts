import type { GreyFrame } from '../../core/frame';

/** Width of the slider's own handle, CSS px: its middle runs from half of it to half of it before the end. */
export const HANDLE = 14;

/** How frames lie along the ribbon, under the slider's handle. */
export interface RibbonScale {
  /** Left edge of nothing but frame 0's middle, and so on; CSS px. */
  at(frame: number): number;
  /** From the beginning of one frame to the end of another, CSS px. */
  cover(first: number, last: number): readonly [left: number, right: number];
}

export function ribbonScale(frameCount: number, width: number): RibbonScale {
  const last = Math.max(1, frameCount - 1);
  const way = Math.max(0, width - HANDLE);
  const at = (frame: number) => HANDLE / 2 + (frame / last) * way;
  const clamp = (place: number) => Math.min(Math.max(place, 0), width);
  return {
    at,
    cover: (first, end) => [clamp(at(first - 0.5)), clamp(at(end + 0.5))],
  };
}

interface Placed {
  readonly picture: GreyFrame;
  readonly left: number;
  readonly right: number;
}

/**
 * As many equal stretches as pictures of the ribbon's height stand side by side, each with the picture nearest to its
 * middle; none where none has come near it yet.
 */
export function picturesThatFit(
  pictures: readonly GreyFrame[],
  frameCount: number,
  scale: RibbonScale,
  height: number,
): Placed[] {
  const [first] = pictures;
  if (first === undefined || frameCount === 0) return [];
  const [start, end] = scale.cover(0, frameCount - 1);
  const natural = (height * first.width) / first.height;
  const count = Math.max(1, Math.min(Math.round((end - start) / natural), frameCount));
  const stretch = frameCount / count;
  return Array.from({ length: count }, (_, i) => {
    const middle = (i + 0.5) * stretch - 0.5;
    const off = (one: GreyFrame) => Math.abs(one.index - middle);
    const picture = pictures.reduce((best, one) => (off(one) < off(best) ? one : best));
    const left = start + ((end - start) * i) / count;
    return {
      picture,
      left,
      right: left + (end - start) / count,
      near: off(picture) <= stretch / 2,
    };
  }).filter(({ near }) => near);
}
