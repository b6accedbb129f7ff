import type { SetupScene } from '../reduction/setupScene';
import { setupKey } from '../shot/setup';
import type { Setup } from '../shot/setupFile';

/** Keeps the still scene of the first shot measured in each setup, to tell later that the camera has moved. */
export interface SetupSceneStore {
  /** The scene kept under `setupKey`; null: none, or that of this very footage. */
  find(key: string, footageSha256: string | null): SetupScene | null;
  /** Keeps it unless one is kept already. A browser that stores nothing compares nothing. */
  keep(key: string, scene: SetupScene, footageSha256: string | null, savedAt: number): void;
}

interface KeptScene extends SetupScene {
  readonly footageSha256: string | null;
  /** ms since 1970 */
  readonly savedAt: number;
}

const PREFIX = 'exitframe-setup-';
/** A scene is some twenty kilobytes; the browser grants about five million characters to all. */
const MOST_SCENES = 20;

export function setupSceneStore(storage: Storage): SetupSceneStore {
  const keptUnder = (key: string): KeptScene | null => {
    try {
      return read(storage.getItem(PREFIX + key));
    } catch {
      return null;
    }
  };
  return {
    find(key, footageSha256) {
      const kept = keptUnder(key);
      if (kept === null || (footageSha256 !== null && kept.footageSha256 === footageSha256)) {
        return null;
      }
      const { shotName, fingerprint } = kept;
      return { shotName, fingerprint };
    },
    keep(key, scene, footageSha256, savedAt) {
      if (keptUnder(key) !== null) return;
      try {
        storage.setItem(PREFIX + key, JSON.stringify({ ...scene, footageSha256, savedAt }));
        const kept = Object.keys(storage)
          .filter((name) => name.startsWith(PREFIX))
          .map((name) => ({ name, savedAt: read(storage.getItem(name))?.savedAt ?? 0 }))
          .sort((a, b) => a.savedAt - b.savedAt);
        for (const { name } of kept.slice(0, -MOST_SCENES)) storage.removeItem(name);
      } catch {
        // Not kept: the next shot of this setup is then the first.
      }
    },
  };
}

/** Lets films measured later in this setup be held against the scene that it was calibrated on. */
export function rememberScene(scenes: SetupSceneStore, { id, scale, muzzle, scene }: Setup): void {
  const key = setupKey({ setupId: id, scale, muzzle });
  if (key !== null && scene !== null) scenes.keep(key, scene, scene.footageSha256, Date.now());
}

function read(text: string | null): KeptScene | null {
  if (text === null) return null;
  try {
    const data: unknown = JSON.parse(text);
    return isKeptScene(data) ? data : null;
  } catch {
    return null;
  }
}

function isKeptScene(data: unknown): data is KeptScene {
  if (typeof data !== 'object' || data === null) return false;
  const { shotName, fingerprint, savedAt } = data as Partial<Record<keyof KeptScene, unknown>>;
  if (typeof shotName !== 'string' || typeof savedAt !== 'number') return false;
  if (typeof fingerprint !== 'object' || fingerprint === null) return false;
  const { width, height, block, levels } = fingerprint as Record<string, unknown>;
  return (
    typeof width === 'number' &&
    typeof height === 'number' &&
    typeof block === 'number' &&
    Array.isArray(levels) &&
    levels.length === Math.floor(width / block) * Math.floor(height / block) &&
    levels.every((level) => typeof level === 'number' && Number.isFinite(level))
  );
}
