import { transfer } from 'comlink';
import type { GreyFrame } from '../src/core/frame';

/** Frames whose data is their whole buffer, so that handing it over takes nothing else along. */
const whole = (frame: GreyFrame): GreyFrame =>
  frame.data.byteLength === frame.data.buffer.byteLength
    ? frame
    : { ...frame, data: frame.data.slice() };

/** Hands a frame to another thread without copying; its buffer is gone from this one. */
export function transferFrame(frame: GreyFrame): GreyFrame {
  const own = whole(frame);
  return transfer(own, [own.data.buffer]);
}

/** The same for several frames at once. */
export function transferFrames(frames: readonly GreyFrame[]): GreyFrame[] {
  const own = frames.map(whole);
  return transfer(
    own,
    own.map((frame) => frame.data.buffer),
  );
}
