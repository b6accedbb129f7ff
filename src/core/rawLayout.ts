import type { RawLayout } from './film';

export const bytesPerSample = ({ bits }: RawLayout) => (bits === 8 ? 1 : 2);

/** Bytes of one frame. */
export const frameBytes = (layout: RawLayout) =>
  layout.width * layout.height * bytesPerSample(layout);

/** How many whole frames a file of `size` bytes holds, and the bytes left over. */
export function fitRaw(size: number, layout: RawLayout): { count: number; left: number } {
  const frame = frameBytes(layout);
  const room = size - layout.skip;
  if (!(frame > 0) || room < frame) return { count: 0, left: Math.max(room, 0) };
  const count = Math.floor((room + layout.gap) / (frame + layout.gap));
  const left = room - count * frame - (count - 1) * layout.gap;
  // A gap may follow the last frame too.
  return { count, left: left === layout.gap ? 0 : left };
}
