import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Claim, claimDesk } from '../../../src/app/keeping/claim';

/** What a tab keeps to itself. */
function tabStorage(kept: Record<string, string> = {}): Storage {
  const items = new Map(Object.entries(kept));
  return {
    ...{ length: 0, clear: () => items.clear(), key: () => null },
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => void items.set(key, value),
    removeItem: (key) => void items.delete(key),
  };
}

/** Locks that no other test holds. */
const locks = {
  request: (name: string, how: LockOptions, use: LockGrantedCallback<unknown>) =>
    navigator.locks.request(`claim-test ${name}`, how, use),
  async query() {
    const { held = [] } = await navigator.locks.query();
    return {
      held: held.flatMap(({ name = '' }) =>
        name.startsWith('claim-test ') ? [{ name: name.slice('claim-test '.length) }] : [],
      ),
    };
  },
} as unknown as LockManager;
const claims: Claim[] = [];
const claim = async (tab: Storage, desks: Record<string, number> = {}) => {
  const made = await claimDesk(locks, tab, new Map(Object.entries(desks)));
  claims.push(made);
  return made;
};
const copyOf = (tab: Storage) =>
  tabStorage({ 'exitframe-desk': tab.getItem('exitframe-desk') ?? '' });

afterEach(async () => {
  for (const { release } of claims.splice(0)) release();
  await vi.waitFor(async () => expect((await locks.query()).held).toEqual([]));
});

describe('a tab', () => {
  it('finds its own desk again after a reload', async () => {
    const tab = tabStorage();
    const before = await claim(tab);
    expect(before.from).toBeNull();
    before.release();
    const after = await claim(tab, { [before.desk]: 5, other: 9 });
    expect(after).toMatchObject({ desk: before.desk, from: before.desk, free: ['other'] });
  });

  it('finds its own also where the page before lets go of it a little later', async () => {
    const tab = tabStorage();
    const before = await claim(tab);
    setTimeout(before.release, 200);
    expect((await claim(tab)).desk).toBe(before.desk);
  });

  it('gets a desk of its own where it was copied, and begins with the same work', async () => {
    const tab = tabStorage();
    const first = await claim(tab);
    const copy = copyOf(tab);
    const second = await claim(copy, { [first.desk]: 1 });
    expect(second.desk).not.toBe(first.desk);
    expect(second.from).toBe(first.desk);
    second.release();
    // From then on it is as any other tab.
    const again = await claim(copy, { [first.desk]: 1, [second.desk]: 2 });
    expect(again).toMatchObject({ desk: second.desk, from: second.desk });
  });

  it('takes up what was left last, if it is the only one', async () => {
    const only = await claim(tabStorage(), { older: 1, newest: 3, old: 2 });
    expect(only).toMatchObject({ desk: 'newest', from: 'newest', free: ['old', 'older'] });
    const second = await claim(tabStorage(), { older: 1, newest: 3, old: 2 });
    expect(second.from).toBeNull();
    expect(['older', 'old', 'newest']).not.toContain(second.desk);
  });

  it('never shares with one that opens at the same moment', async () => {
    const [a, b] = await Promise.all([
      claim(tabStorage(), { left: 1 }),
      claim(tabStorage(), { left: 1 }),
    ]);
    expect(a?.desk).not.toBe(b?.desk);
  });

  it('keeps to itself where the browser has no locks', async () => {
    const tab = tabStorage();
    const first = await claimDesk(null, tab, new Map([['left', 1]]));
    expect(first).toMatchObject({ from: null, free: [] });
    expect(await claimDesk(null, tab, new Map())).toMatchObject({
      desk: first.desk,
      from: first.desk,
    });
  });
});
