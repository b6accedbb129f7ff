import { expect, test } from 'vitest';
import { freeMemory } from '../../../src/footage/freeing';

test('what is freed holds no memory, time and again', async () => {
  for (let round = 0; round < 3; round++) {
    const arrays = [new Uint8Array(4), new Uint16Array(4)];
    freeMemory(arrays);
    expect(arrays.map(({ buffer }) => buffer.byteLength)).toEqual([0, 0]);
    // The port hears meanwhile that its other end is closed.
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
});
