import type { FrameRange } from '../core/film';
import { copyOf, type GreyFrame } from '../core/frame';
import { AFTER, BEFORE } from './passage';
import type { FrameSupply } from './work';

/** Enough for the flight as most cameras film it; what of a longer one is not held is decoded again. */
const MOST_BYTES = 40 * 1024 * 1024;

/** A film of which the frames worth a closer look are held while it is gone through for the first time. */
export interface HeldFrames extends FrameSupply {
  /** Takes over each frame of the first pass, in order, and is told whether anything moves in it. */
  watch(frame: GreyFrame, isActive: boolean): void;
  /** Holds none any more. */
  letGo(): void;
}

/**
 * Holds frames in which something moves and those around them, up to a number of bytes, and gives copies of them: the
 * frames of a flight are looked at four times, and decoding them costs more than holding them.
 */
export function holdFrames(film: FrameSupply, mostBytes = MOST_BYTES): HeldFrames {
  const held = new Map<number, GreyFrame>();
  /** The last frames in which nothing moved: what comes next may make them worth holding. */
  const recent: GreyFrame[] = [];
  let bytes = 0;
  let sinceActive = Number.POSITIVE_INFINITY;
  const dropRecent = () => {
    const frame = recent.shift();
    if (frame === undefined) return;
    bytes -= frame.data.byteLength;
    film.done?.(frame);
  };
  const hasRoom = ({ data }: GreyFrame): boolean => {
    while (recent.length > 0 && bytes + data.byteLength > mostBytes) dropRecent();
    return bytes + data.byteLength <= mostBytes;
  };
  return {
    watch(frame, isActive) {
      sinceActive = isActive ? 0 : sinceActive + 1;
      if (isActive) {
        for (const before of recent) held.set(before.index, before);
        recent.length = 0;
      }
      if (!hasRoom(frame)) {
        film.done?.(frame);
        return;
      }
      bytes += frame.data.byteLength;
      if (sinceActive <= AFTER) held.set(frame.index, frame);
      else recent.push(frame);
      if (recent.length > BEFORE) dropRecent();
    },
    async *frames({ start, end, step = 1 }: FrameRange) {
      for (let index = start; index < end; ) {
        const frame = held.get(index);
        if (frame !== undefined) {
          yield copyOf(frame);
          index += step;
          continue;
        }
        let until = index + step;
        while (until < end && !held.has(until)) until += step;
        yield* film.frames({ start: index, end: Math.min(until, end), step });
        index = until;
      }
    },
    letGo() {
      for (const frame of [...held.values(), ...recent]) film.done?.(frame);
      held.clear();
      recent.length = 0;
      bytes = 0;
    },
  };
}
