/**
 * A sum of 32 bits over grey values, of which one changed bit changes all: two planes that differ have the same one
 * about once in 4 thousand million. MurmurHash3_x86_32 (from memory), quick enough to be taken of every frame.
 */
export function planeSum(plane: Uint8Array | Uint16Array): number {
  const bytes = new Uint8Array(plane.buffer, plane.byteOffset, plane.byteLength);
  const aligned = bytes.byteOffset % 4 === 0 ? bytes : bytes.slice();
  const words = new Uint32Array(aligned.buffer, aligned.byteOffset, aligned.length >> 2);
  let sum = 0;
  for (let i = 0; i < words.length; i++) {
    sum = rotated(sum ^ scattered(words[i] as number), 13);
    sum = (Math.imul(sum, 5) + 0xe6546b64) | 0;
  }
  const rest = aligned.subarray(4 * words.length);
  sum ^= scattered(rest.reduceRight((word, byte) => (word << 8) | byte, 0));
  sum ^= aligned.length;
  sum = Math.imul(sum ^ (sum >>> 16), 0x85ebca6b);
  sum = Math.imul(sum ^ (sum >>> 13), 0xc2b2ae35);
  return (sum ^ (sum >>> 16)) >>> 0;
}

const rotated = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

const scattered = (word: number): number =>
  Math.imul(rotated(Math.imul(word, 0xcc9e2d51), 15), 0x1b873593);
