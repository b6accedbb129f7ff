import { showNumberAt } from '../../text/show';

/** A region's numbers as they stand in a sentence; pixels. */
export function regionValues([x, y, width, height]: readonly [number, number, number, number]) {
  const text = (pixels: number) => showNumberAt(pixels, 6);
  return { x: text(x), y: text(y), width: text(width), height: text(height) };
}
