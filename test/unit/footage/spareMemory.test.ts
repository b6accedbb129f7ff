import { describe, expect, it } from 'vitest';
import { spareMemory } from '../../../src/footage/spareMemory';

const MIB = 1 << 20;

describe('spare memory', () => {
  it('gives what it was given, once', () => {
    const memory = spareMemory();
    const buffer = new ArrayBuffer(MIB);
    memory.give([buffer]);
    expect(memory.take(MIB)).toBe(buffer);
    const other = memory.take(MIB);
    expect(other).not.toBe(buffer);
    expect(other.byteLength).toBe(MIB);
  });

  it('keeps none of another size than is asked for', () => {
    const memory = spareMemory();
    const buffers = [new ArrayBuffer(MIB), new ArrayBuffer(MIB)];
    memory.give(buffers);
    expect(memory.take(2 * MIB).byteLength).toBe(2 * MIB);
    expect(buffers).not.toContain(memory.take(MIB));
  });

  it('keeps 4 MiB at most', () => {
    const memory = spareMemory();
    const buffers = Array.from({ length: 20 }, () => new ArrayBuffer(MIB));
    memory.give(buffers.slice(0, 15));
    memory.give(buffers.slice(15));
    const taken = Array.from({ length: 20 }, () => memory.take(MIB));
    expect(taken.filter((one) => buffers.includes(one))).toHaveLength(4);
  });
});
