import type { GreyFrame } from '../core/frame';
import type { Pixels } from '../core/units';

/** A frame made smaller by a whole factor: each pixel the mean of a square of `by` times `by`. */
export interface Shrunk {
  readonly frame: GreyFrame;
  readonly by: number;
}

/** The frame with neither side longer than `most`, for a look at it; what does not fill a square is left out. */
export function shrink(frame: GreyFrame, most: Pixels): Shrunk {
  const longest = Math.max(frame.width, frame.height);
  const by = Math.min(Math.ceil(longest / most), frame.width, frame.height);
  const width = Math.floor(frame.width / by);
  const height = Math.floor(frame.height / by);
  const data = frame.data.slice(0, width * height);
  for (let y = 0, p = 0; y < height; y++) {
    for (let x = 0; x < width; x++, p++) {
      let sum = 0;
      for (let row = y * by; row < (y + 1) * by; row++) {
        const start = row * frame.width + x * by;
        for (let q = start; q < start + by; q++) sum += frame.data[q] as number;
      }
      data[p] = Math.round(sum / (by * by));
    }
  }
  return { frame: { ...frame, width, height, data }, by };
}
