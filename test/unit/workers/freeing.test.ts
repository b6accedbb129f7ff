import { expect, test } from 'vitest';
import { freeFrames } from '../../../workers/freeing';

test('frames that are freed hold no memory, time and again', async () => {
  for (let round = 0; round < 3; round++) {
    const frames = [0, 1].map((index) => ({
      ...{ index, width: 2, height: 2, white: 255 },
      data: new Uint8Array(4),
    }));
    freeFrames(frames);
    expect(frames.map(({ data }) => data.buffer.byteLength)).toEqual([0, 0]);
    // The port hears meanwhile that its other end is closed.
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
});
