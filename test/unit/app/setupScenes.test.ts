import { beforeEach, describe, expect, it } from 'vitest';
import { type SetupSceneStore, setupSceneStore } from '../../../src/app/setupScenes';
import type { SetupScene } from '../../../src/reduction/setupScene';

/** Storage as a browser has it: items are its own keys, and it holds no more than it grants. */
class MemoryStorage implements Storage {
  [name: string]: unknown;
  static room = 1e7;
  get length() {
    return Object.keys(this).length;
  }
  key = (index: number) => Object.keys(this)[index] ?? null;
  getItem(name: string): string | null {
    const item = Object.hasOwn(this, name) ? this[name] : null;
    return typeof item === 'string' ? item : null;
  }
  setItem(name: string, value: string) {
    if (value.length > MemoryStorage.room) throw new Error('quota exceeded');
    this[name] = value;
  }
  removeItem(name: string) {
    delete this[name];
  }
  clear() {
    for (const name of Object.keys(this)) delete this[name];
  }
}

const scene = (shotName: string): SetupScene => ({
  shotName,
  fingerprint: { width: 16, height: 8, block: 8, levels: [1200, 3400] },
});

let storage: MemoryStorage;
let store: SetupSceneStore;
beforeEach(() => {
  storage = new MemoryStorage();
  store = setupSceneStore(storage);
  MemoryStorage.room = 1e7;
});

describe('setupSceneStore', () => {
  it('gives a later shot the scene of the first, and the first none', () => {
    store.keep('bench', scene('2031-04-17 A'), 'aa', 1);
    store.keep('bench', scene('2031-04-17 B'), 'bb', 2);
    expect(store.find('bench', 'bb')).toEqual(scene('2031-04-17 A'));
    expect(store.find('bench', null)).toEqual(scene('2031-04-17 A'));
    expect(store.find('bench', 'aa')).toBeNull();
    expect(store.find('other bench', 'bb')).toBeNull();
  });

  it('keeps no more than the last twenty setups', () => {
    for (let i = 0; i < 25; i++) store.keep(`bench ${i}`, scene('A'), 'aa', i);
    expect(store.find('bench 4', 'bb')).toBeNull();
    expect(store.find('bench 5', 'bb')).not.toBeNull();
    expect(store.find('bench 24', 'bb')).not.toBeNull();
  });

  it('takes nothing that is damaged', () => {
    storage.setItem('exitframe-setup-bench', '{"shotName":"A","savedAt":1,"fingerprint":{}}');
    expect(store.find('bench', 'bb')).toBeNull();
    storage.setItem('exitframe-setup-bench', 'not even JSON');
    expect(store.find('bench', 'bb')).toBeNull();
  });

  it('does without where the browser stores nothing', () => {
    MemoryStorage.room = 0;
    store.keep('bench', scene('A'), 'aa', 1);
    expect(store.find('bench', 'bb')).toBeNull();
  });
});
