import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inBlocks } from '../../../src/footage/blocks';

describe('reading in blocks', () => {
  const bytes = Uint8Array.from({ length: 3_500_000 }, (_, i) => (i * 31 + (i >> 8)) % 251);
  const plain = { size: bytes.length, read: (a: number, b: number) => bytes.subarray(a, b) };

  it('gives the bytes that are there', () => {
    const reader = inBlocks(plain);
    const place = fc.integer({ min: 0, max: bytes.length });
    fc.assert(
      fc.property(place, place, (a, b) => {
        const [start, end] = a < b ? [a, b] : [b, a];
        expect(Buffer.compare(reader.read(start, end), bytes.subarray(start, end))).toBe(0);
      }),
      { numRuns: 50, seed: 1 },
    );
  });

  it('asks for each block once while it is in use', () => {
    const asked: [number, number][] = [];
    const done: number[] = [];
    const reader = inBlocks({
      size: plain.size,
      read(start, end) {
        asked.push([start, end]);
        return plain.read(start, end);
      },
      done: (bytes) => done.push(bytes.byteOffset),
    });
    for (let at = 0; at < plain.size; at += 32_768) {
      reader.read(at, Math.min(at + 32_768, plain.size));
      reader.read(0, 8); // the index, again and again
    }
    expect(asked).toEqual([
      [0, 1_048_576],
      [1_048_576, 2_097_152],
      [2_097_152, 3_145_728],
      [3_145_728, 3_500_000],
    ]);
    expect(done).toEqual([]);
  });

  it('gives those back that were used longest ago', () => {
    const MIB = 1 << 20;
    const done: number[] = [];
    const reader = inBlocks({
      size: 9 * MIB,
      read: (start, end) => Uint8Array.from({ length: end - start }, () => start / MIB),
      done: ([block]) => done.push(block as number),
    });
    for (const block of [0, 1, 2, 3, 4, 5, 0, 6, 7]) {
      expect(reader.read(block * MIB, block * MIB + 1)[0]).toBe(block);
    }
    expect(done).toEqual([1, 2]);
  });
});
