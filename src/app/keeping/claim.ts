/** Which desk a tab works at. Each has one of its own, so that no tab writes over another's work. */
export interface Claim {
  readonly desk: string;
  /** Whose work it begins with: its own, that of the tab it was copied from, or of a window closed; null: none. */
  readonly from: string | null;
  /** Desks that no tab works at. */
  readonly free: readonly string[];
  release(): void;
}

const KEY = 'exitframe-desk';
const LOCK = 'exitframe-desk-';
/** The page before a reload lets go of its desk within this time, ms; a copied tab's never does. */
const HANDED_OVER_WITHIN_MS = 1500;

/**
 * Claims a desk. A reload finds its own again; the first tab opened takes up the one left last; any other starts on
 * an empty one. `desks` gives when each was last written to.
 */
export async function claimDesk(
  locks: LockManager | null,
  tab: Storage,
  desks: ReadonlyMap<string, number>,
  newName: () => string = () => crypto.randomUUID(),
): Promise<Claim> {
  const own = tab.getItem(KEY);
  const settled = (
    desk: string,
    from: string | null,
    free: readonly string[],
    release: () => void,
  ) => {
    tab.setItem(KEY, desk);
    return { desk, from, free, release };
  };
  // Without locks nobody can tell a reload from a copied tab, so nothing is ever taken away.
  if (locks === null) return settled(own ?? newName(), own, [], () => {});

  const isTaken = await desksTaken(locks);
  const others = [...desks.keys()]
    .filter((desk) => desk !== own && !isTaken.has(desk))
    .sort((a, b) => (desks.get(b) ?? 0) - (desks.get(a) ?? 0));
  if (own !== null) {
    const release = await hold(locks, own, { signal: AbortSignal.timeout(HANDED_OVER_WITHIN_MS) });
    if (release !== null) return settled(own, own, others, release);
  } else if (isTaken.size === 0) {
    for (const desk of others) {
      const release = await hold(locks, desk, { ifAvailable: true });
      const free = others.filter((one) => one !== desk);
      if (release !== null) return settled(desk, desk, free, release);
    }
  }
  const fresh = newName();
  const release = await hold(locks, fresh, { ifAvailable: true });
  return settled(fresh, own, others, release ?? (() => {}));
}

async function desksTaken(locks: LockManager): Promise<ReadonlySet<string>> {
  const { held = [] } = await locks.query();
  return new Set(
    held.flatMap(({ name }) => (name?.startsWith(LOCK) ? [name.slice(LOCK.length)] : [])),
  );
}

/** Holds a desk until it is released or the page goes; null where another tab holds it. */
const hold = (locks: LockManager, desk: string, how: LockOptions): Promise<(() => void) | null> =>
  new Promise((resolve) => {
    locks
      .request(LOCK + desk, how, (lock) => {
        if (lock === null) return resolve(null);
        return new Promise<void>((release) => resolve(release));
      })
      .catch(() => resolve(null));
  });
