import { afterEach, beforeEach, expect, it } from 'vitest';
import { openRecords, type Records } from '../../../src/app/keeping/records';

const NAME = 'records-test';
let time = 0;
let records: Records;
beforeEach(async () => {
  records = await openRecords(() => ++time, indexedDB, NAME);
});
afterEach(() => void indexedDB.deleteDatabase(NAME));

it('keeps parts of desks apart, and says when each was written', async () => {
  await records.put('a', { shot: { x: 1 }, view: 'v' });
  await records.put('ab', { shot: { x: 2 } });
  await records.put('a', { shot: new Map([[3, Float32Array.of(1, 2)]]) });
  expect(await records.get('a', 'shot')).toEqual(new Map([[3, Float32Array.of(1, 2)]]));
  expect(await records.get('a', 'view')).toBe('v');
  expect(await records.get('ab', 'shot')).toEqual({ x: 2 });
  const desks = await records.desks();
  expect([...desks.keys()].sort()).toEqual(['a', 'ab']);
  expect(desks.get('a')).toBeGreaterThan(desks.get('ab') ?? 0);
});

it('removes a desk whole and no other', async () => {
  await records.put('a', { shot: 1, view: 2 });
  await records.put('ab', { shot: 3 });
  await records.remove('a');
  expect(await records.get('a', 'shot')).toBeUndefined();
  expect(await records.get('a', 'view')).toBeUndefined();
  expect([...(await records.desks()).keys()]).toEqual(['ab']);
});

it('writes all parts or none', async () => {
  await records.put('a', { shot: 1 });
  // A function cannot be stored.
  await expect(records.put('a', { shot: 2, view: () => {} })).rejects.toThrow();
  expect(await records.get('a', 'shot')).toBe(1);
});

it('makes way for a newer version of the tool in another tab', async () => {
  await new Promise<void>((resolve, reject) => {
    const newer = indexedDB.open(NAME, 2);
    newer.onsuccess = () => {
      newer.result.close();
      resolve();
    };
    newer.onblocked = () => reject(new Error('it was kept waiting'));
  });
  await expect(records.put('a', { shot: 1 })).rejects.toThrow();
});

it('tells that all is gone where its store is deleted under it, and keeps again', async () => {
  await records.put('a', { shot: 1 });
  const lost = new Promise<void>((resolve) => records.whenLost(resolve));
  indexedDB.deleteDatabase(NAME);
  await lost;
  await records.put('a', { shot: 2 });
  expect(await records.get('a', 'shot')).toBe(2);
});
