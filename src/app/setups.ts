import { computed, signal } from '@preact/signals';
import { failure, type Outcome, success } from '../core/reason';
import type { Shot } from '../shot/schema';
import { parseSetup, type Setup, setupOf } from '../shot/setupFile';
import { completeShot, type ShotDraft } from './draft';
import type { Reduction } from './resultTypes';

const PREFIX = 'exitframe-calibrated-';

/** The setups kept in this browser, one under each key, so that no tab writes over another's. */
export function createSetups(storage: Storage, newId: () => string = () => crypto.randomUUID()) {
  const known = signal(readAll(storage));
  const follow = (event: StorageEvent) => {
    if (event.key === null || event.key.startsWith(PREFIX)) known.value = readAll(storage);
  };
  addEventListener('storage', follow);
  return {
    /** By name. */
    list: computed(() => [...known.value.values()].sort((a, b) => a.name.localeCompare(b.name))),
    find: (id: string | null): Setup | null => (id === null ? null : (known.value.get(id) ?? null)),
    newId,
    /** It is there for this visit even where the browser does not keep it. Failure `setupNotKept`. */
    add(setup: Setup): Outcome<null> {
      known.value = new Map(known.value).set(setup.id, setup);
      try {
        storage.setItem(PREFIX + setup.id, JSON.stringify(setup));
        return success(null);
      } catch {
        return failure(
          'setupNotKept',
          `The browser did not keep the setup ${setup.name}.`,
          'Save it to a file before you close the window.',
          { setup: setup.name },
        );
      }
    },
    forget(id: string) {
      const others = new Map(known.value);
      others.delete(id);
      known.value = others;
      storage.removeItem(PREFIX + id);
    },
    dispose: () => removeEventListener('storage', follow),
  };
}

export type Setups = ReturnType<typeof createSetups>;

function readAll(storage: Storage): ReadonlyMap<string, Setup> {
  const found = new Map<string, Setup>();
  for (const key of Object.keys(storage).filter((one) => one.startsWith(PREFIX))) {
    const setup = parseSetup(storage.getItem(key) ?? '');
    if (setup.ok) found.set(setup.value.id, setup.value);
  }
  return found;
}

/** What of a measured shot tells later that the camera moved. */
export const sceneOf = (shotName: string, { fingerprint, result }: Reduction): Setup['scene'] => ({
  ...{ shotName, fingerprint },
  footageSha256: result.footageSha256,
});

/** The setup that a shot stands on, or what is missing for one. */
export function setupFrom(
  draft: ShotDraft,
  about: Pick<Setup, 'id' | 'name' | 'frame' | 'scene'>,
): Outcome<Setup> {
  const shot = completeShot(draft);
  if (!shot.ok) return shot;
  const { muzzle } = shot.value;
  return muzzle === null
    ? failure('noMuzzle', 'The muzzle plane is not marked yet.', 'Mark it on the Scale step.')
    : success(setupOf({ ...shot.value, muzzle }, about));
}

/** Whether clock, scale and muzzle of a shot are still those of the setup. */
export function stillFollows(draft: ShotDraft, { timing, scale, muzzle }: Setup): boolean {
  const { droppedFrames: _, ...clock } = draft.timing;
  const parts = [clock, draft.scale, draft.muzzle];
  return JSON.stringify(parts) === JSON.stringify([timing, scale, muzzle]);
}

/** Takes over clock, scale, lens, plane and muzzle; frames the clip lost stay its own. */
export const followSetup =
  ({ id, timing, scale, muzzle }: Setup) =>
  <T extends Pick<ShotDraft, 'timing' | 'scale' | 'muzzle' | 'setupId'>>(draft: T): T => ({
    ...draft,
    ...{ scale, muzzle, setupId: id },
    timing: { ...timing, droppedFrames: draft.timing.droppedFrames },
  });

/** A setup marked on frames of another size says nothing of these. Failure `setupSizeDiffers`. */
export function setupFits(
  { name, frame }: Setup,
  { width, height }: Setup['frame'],
): Outcome<null> {
  return frame.width === width && frame.height === height
    ? success(null)
    : failure(
        'setupSizeDiffers',
        `The frames are ${width} × ${height} px; the setup ${name} was marked on frames of ${frame.width} × ${frame.height} px.`,
        'Choose the setup that this clip was filmed in.',
        {
          ...{ setup: name, width, height },
          ...{ setupWidth: frame.width, setupHeight: frame.height },
        },
      );
}

/** A shot's own part, for one that follows a setup: nothing of the clip, and marks only of the same camera position. */
export function sharedOf(draft: ShotDraft, setup: Setup): Partial<Shot> {
  const { ball, air, launcher, target, fit, coverage } = draft;
  const shared = { ball, air, launcher, target, fit, coverage };
  if (draft.setupId !== setup.id) return shared;
  const unopened = (seal: NonNullable<Shot['seals']>['muzzle']) =>
    seal && { ...seal, burstBetween: null };
  const { seals, region } = draft;
  return {
    ...{ ...shared, region },
    seals: seals && { muzzle: unopened(seals.muzzle), rear: unopened(seals.rear) },
  };
}
