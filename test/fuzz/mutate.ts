import type { Random } from '../../src/core/random';

/** Bytes changed, and how in words. */
export interface Mutant {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly how: string;
}

type Change = (bytes: Uint8Array<ArrayBuffer>, random: Random) => Mutant;

export const below = (random: Random, count: number): number =>
  Math.floor(random.uniform() * Math.max(count, 1));
export const oneOf = <T>(random: Random, list: readonly T[]): T =>
  list[below(random, list.length)] as T;

/** A place and a length within the bytes, short ones as likely as long ones. */
function run(bytes: Uint8Array, random: Random): { at: number; length: number } {
  const longest = Math.max(1, bytes.length >> 2);
  const length = Math.max(1, Math.floor(longest ** random.uniform()));
  return { at: below(random, bytes.length - length), length };
}

const joined = (...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

const flipBits: Change = (bytes, random) => {
  const changed = bytes.slice();
  const count = 1 + below(random, 8);
  const at = Array.from({ length: count }, () => below(random, bytes.length));
  for (const place of at) changed[place] = (changed[place] ?? 0) ^ (1 << below(random, 8));
  return { bytes: changed, how: `bits flipped at ${at.join(', ')}` };
};

const zero: Change = (bytes, random) => {
  const { at, length } = run(bytes, random);
  const changed = bytes.slice();
  changed.fill(0, at, at + length);
  return { bytes: changed, how: `${length} bytes from ${at} on zeroed` };
};

const scramble: Change = (bytes, random) => {
  const { at, length } = run(bytes, random);
  const changed = bytes.slice();
  for (let i = at; i < at + length; i++) changed[i] = below(random, 256);
  return { bytes: changed, how: `${length} bytes from ${at} on at random` };
};

const remove: Change = (bytes, random) => {
  const { at, length } = run(bytes, random);
  return {
    bytes: joined(bytes.subarray(0, at), bytes.subarray(at + length)),
    how: `${length} bytes from ${at} on deleted`,
  };
};

const double: Change = (bytes, random) => {
  const { at, length } = run(bytes, random);
  return {
    bytes: joined(bytes.subarray(0, at + length), bytes.subarray(at)),
    how: `${length} bytes from ${at} on doubled`,
  };
};

const swap: Change = (bytes, random) => {
  const { length } = run(bytes, random);
  const first = below(random, bytes.length - 2 * length);
  const second = first + length + below(random, bytes.length - first - 2 * length);
  const changed = bytes.slice();
  changed.set(bytes.subarray(second, second + length), first);
  changed.set(bytes.subarray(first, first + length), Math.min(second, bytes.length - length));
  return { bytes: changed, how: `${length} bytes from ${first} and ${second} on exchanged` };
};

const truncate: Change = (bytes, random) => {
  const length = below(random, bytes.length);
  return { bytes: bytes.slice(0, length), how: `cut off after ${length} bytes` };
};

/** Nothing, one, the largest with and without a sign, and the first negative one. */
const EXTREMES = [0n, 1n, 0x7fff_ffff_ffff_ffffn, 0xffff_ffff_ffff_ffffn, 1n << 63n];

function extremeAt(bytes: Uint8Array<ArrayBuffer>, at: number, random: Random): Mutant {
  const changed = bytes.slice();
  const width = oneOf(random, [1, 2, 4, 4, 4, 8]);
  const extreme = oneOf(random, EXTREMES);
  const value = extreme > 1n ? extreme >> BigInt(64 - 8 * width) : extreme;
  const little = random.uniform() < 0.5;
  for (let i = 0; i < width && at + i < bytes.length; i++) {
    changed[at + i] = Number((value >> BigInt(8 * (little ? i : width - 1 - i))) & 255n);
  }
  return { bytes: changed, how: `${width}-byte field at ${at} set to ${value}` };
}

const isLetter = (byte: number | undefined) =>
  byte !== undefined &&
  ((byte >= 65 && byte <= 90) || (byte >= 97 && byte <= 122) || byte === 0x20);

/** Places beside four letters: sizes of boxes and chunks stand before or behind their names. */
const beside: Change = (bytes, random) => {
  const places: number[] = [];
  for (let i = 0; i + 4 <= bytes.length; i++) {
    if ([0, 1, 2, 3].every((letter) => isLetter(bytes[i + letter]))) places.push(i - 4, i + 4);
  }
  const at = oneOf(random, places.length > 0 ? places : [0]);
  return extremeAt(bytes, Math.max(0, at), random);
};

const inHead: Change = (bytes, random) =>
  extremeAt(bytes, below(random, Math.min(bytes.length, 256)), random);

/** Indices commonly stand at a file's end. */
const inTail: Change = (bytes, random) =>
  extremeAt(bytes, bytes.length - 1 - below(random, Math.min(bytes.length, 512)), random);

const CHANGES: readonly Change[] = [
  ...[flipBits, flipBits, zero, scramble, remove, double, swap, truncate],
  ...[beside, beside, inHead, inTail],
];

/** One to three changes, one most of the time. The same for the same random numbers. */
export function mutate(bytes: Uint8Array<ArrayBuffer>, random: Random): Mutant {
  const count = oneOf(random, [1, 1, 1, 2, 3]);
  let mutant: Mutant = { bytes, how: '' };
  for (let i = 0; i < count && mutant.bytes.length > 1; i++) {
    const next = oneOf(random, CHANGES)(mutant.bytes, random);
    mutant = { bytes: next.bytes, how: i === 0 ? next.how : `${mutant.how}; ${next.how}` };
  }
  return mutant;
}
