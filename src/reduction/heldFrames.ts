import type { FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { FrameSupply } from './work';

/** Enough for the flight as most cameras film it; a longer one is decoded again. */
const MOST_BYTES = 96 * 1024 * 1024;

/**
 * A supply that keeps the frames it gives, up to a number of bytes, and gives copies where all of a range is kept: the
 * frames of a flight are looked at three times, and decoding them costs more than holding them.
 */
export function holdFrames(film: FrameSupply, mostBytes = MOST_BYTES): FrameSupply {
  const held = new Map<number, GreyFrame>();
  let bytes = 0;
  const hold = (frame: GreyFrame) => {
    if (held.has(frame.index) || bytes + frame.data.byteLength > mostBytes) return;
    held.set(frame.index, copyOf(frame));
    bytes += frame.data.byteLength;
  };
  return {
    async *frames(range) {
      const kept = indicesOf(range).map((index) => held.get(index));
      if (kept.every((frame) => frame !== undefined)) {
        for (const frame of kept) yield copyOf(frame);
        return;
      }
      for await (const frame of film.frames(range)) {
        hold(frame);
        yield frame;
      }
    },
  };
}

const indicesOf = ({ start, end, step = 1 }: FrameRange): number[] =>
  Array.from({ length: Math.ceil((end - start) / step) }, (_, i) => start + i * step);

/** Frames are handed to other threads, which takes their memory away. */
const copyOf = (frame: GreyFrame): GreyFrame => ({ ...frame, data: frame.data.slice() });
