import { describe, expect, it } from 'vitest';
import { sha256 } from '../../../src/footage/hash';
import { inMemory } from './reading';

describe('hash of footage', () => {
  it('is SHA-256', async () => {
    // The one-block example of NIST FIPS 180, "abc". From memory.
    const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(await sha256([inMemory('abc', 'abc')])).toBe(abc);
    expect(await sha256([inMemory('a', 'a'), inMemory('bc', 'bc')])).toBe(abc);
  });

  it('reads a long file in slices and tells how far it is', async () => {
    // NIST FIPS 180's long example: a million times "a". From memory.
    const bytes = new Uint8Array(1_000_000).fill(97);
    const shares: number[] = [];
    const files = [inMemory('1', bytes.subarray(0, 999)), inMemory('2', bytes.subarray(999))];
    expect(await sha256(files, (share) => shares.push(share))).toBe(
      'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
    );
    expect(shares).toEqual([999 / 1_000_000, 1]);
  });

  it('stops when cancelled', async () => {
    const cancel = new AbortController();
    const files = [inMemory('1', 'abc'), inMemory('2', 'abc')];
    const hashing = sha256(files, () => cancel.abort(), cancel.signal);
    await expect(hashing).rejects.toMatchObject({ name: 'AbortError' });
  });
});
