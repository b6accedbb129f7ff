import { transfer } from 'comlink';
import type { GreyFrame } from '../src/core/frame';

/** Hands frames to another thread without copying; their buffers are gone from this one. */
export function transferFrames(frames: GreyFrame[]): GreyFrame[] {
  const whole = frames.map((frame) =>
    frame.data.byteLength === frame.data.buffer.byteLength
      ? frame
      : { ...frame, data: frame.data.slice() },
  );
  return transfer(
    whole,
    whole.map((frame) => frame.data.buffer),
  );
}
