import type { GreyFrame } from '../core/frame';

/** Frames near the one on screen, kept up to a number of bytes; a frame asked for twice is decoded once. */
export interface FrameCache {
  get(index: number): Promise<GreyFrame>;
  /** The frame if it is here already. */
  peek(index: number): GreyFrame | null;
  clear(): void;
}

/** Least recently used first out. `load` decodes one frame. */
export function createFrameCache(
  load: (index: number) => Promise<GreyFrame>,
  largestBytes: number,
): FrameCache {
  // A Map keeps the order of insertion: the first key is the least recently used.
  const kept = new Map<number, GreyFrame>();
  const coming = new Map<number, Promise<GreyFrame>>();
  let bytes = 0;
  let generation = 0;

  const touch = (index: number): GreyFrame | null => {
    const frame = kept.get(index);
    if (frame === undefined) return null;
    kept.delete(index);
    kept.set(index, frame);
    return frame;
  };
  const keep = (index: number, frame: GreyFrame) => {
    kept.set(index, frame);
    bytes += frame.data.byteLength;
    for (const [oldest, old] of kept) {
      if (bytes <= largestBytes || kept.size === 1) break;
      kept.delete(oldest);
      bytes -= old.data.byteLength;
    }
  };
  return {
    peek: touch,
    get(index) {
      const here = touch(index);
      if (here !== null) return Promise.resolve(here);
      const under = coming.get(index);
      if (under !== undefined) return under;
      const asked = generation;
      const wanted = load(index)
        .then((frame) => {
          if (asked === generation) keep(index, frame);
          return frame;
        })
        .finally(() => {
          if (coming.get(index) === wanted) coming.delete(index);
        });
      coming.set(index, wanted);
      return wanted;
    },
    clear() {
      generation += 1;
      kept.clear();
      coming.clear();
      bytes = 0;
    },
  };
}
