/** The browser's record store (IndexedDB): what is kept of each desk, by part. */
export interface Records {
  /** Writes parts of a desk, all or none; resolves once they are on disk. */
  put(desk: string, parts: Readonly<Record<string, unknown>>): Promise<void>;
  get(desk: string, part: string): Promise<unknown>;
  /** Every desk with the time it was last written, ms since 1970. */
  desks(): Promise<ReadonlyMap<string, number>>;
  remove(desk: string): Promise<void>;
  /** Tells when all that was kept is gone: somebody cleared the browser's storage. It can be written to again. */
  whenLost(tell: () => void): void;
}

const STORE = 'parts';
const STAMP = 'stamp';

/** Rejects where the browser keeps nothing. */
export async function openRecords(
  now: () => number,
  factory: IDBFactory = indexedDB,
  name = 'exitframe',
): Promise<Records> {
  let connection: Promise<IDBDatabase> | null = null;
  let lost = () => {};
  const open = async (): Promise<IDBDatabase> => {
    const opening = factory.open(name, 1);
    opening.onupgradeneeded = () => void opening.result.createObjectStore(STORE);
    const database = await answerOf(opening);
    // Another tab with a newer version of the tool must not wait for this one.
    database.onversionchange = ({ newVersion }) => {
      database.close();
      connection = null;
      if (newVersion === null) lost();
    };
    database.onclose = () => {
      connection = null;
      lost();
    };
    return database;
  };
  const connected = (): Promise<IDBDatabase> => {
    connection ??= open().catch((error: unknown) => {
      connection = null; // so that the next try asks again
      throw error;
    });
    return connection;
  };
  await connected();
  const written = async (change: (store: IDBObjectStore) => void): Promise<void> => {
    const transaction = (await connected()).transaction(STORE, 'readwrite');
    try {
      change(transaction.objectStore(STORE));
    } catch (error) {
      transaction.abort();
      throw error;
    }
    // At once, or what is written while the page is left would be lost.
    transaction.commit();
    await endOf(transaction);
  };
  const read = async <T>(ask: (store: IDBObjectStore) => IDBRequest<T>) =>
    answerOf(ask((await connected()).transaction(STORE).objectStore(STORE)));
  const get = (desk: string, part: string): Promise<unknown> =>
    read((store) => store.get([desk, part]));
  return {
    get,
    whenLost(tell) {
      lost = tell;
    },
    put: (desk, parts) =>
      written((store) => {
        for (const [part, value] of Object.entries(parts)) store.put(value, [desk, part]);
        store.put(now(), [desk, STAMP]);
      }),
    async desks() {
      const keys = await read((store) => store.getAllKeys());
      const stamped = keys.flatMap((key) =>
        Array.isArray(key) && key[1] === STAMP && typeof key[0] === 'string' ? [key[0]] : [],
      );
      const stamps = await Promise.all(stamped.map((desk) => get(desk, STAMP)));
      return new Map(stamped.map((desk, i) => [desk, Number(stamps[i])]));
    },
    remove: (desk) =>
      // An array sorts after every text: the range holds all parts of this desk.
      written((store) => void store.delete(IDBKeyRange.bound([desk], [desk, []]))),
  };
}

const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const endOf = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
  });
