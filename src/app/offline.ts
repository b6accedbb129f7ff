import { type ReadonlySignal, signal } from '@preact/signals';

/** Whether the tool starts without a network, and whether a newer one waits to be taken. */
export interface Offline {
  /** `none`: this browser, or a page served without encryption, keeps no program. */
  readonly state: ReadonlySignal<'none' | 'saving' | 'kept' | 'failed'>;
  readonly newVersion: ReadonlySignal<boolean>;
  /** Reloads the page as the new version. The work is kept as with any reload. */
  takeNewVersion(): void;
}

export const NO_OFFLINE: Offline = {
  state: signal('none'),
  newVersion: signal(false),
  takeNewVersion: () => {},
};

/** A window left open for days asks for a newer version when it is looked at, at most this often, ms. */
const ASK_EVERY_MS = 3_600_000;

/** Has the browser keep the program, from the service worker at `address`. */
export function keepProgram(
  container: ServiceWorkerContainer | undefined,
  address: URL,
  reload: () => void,
): Offline {
  if (container === undefined) return NO_OFFLINE;
  const state = signal<Offline['state']['value']>('saving');
  const newVersion = signal(false);
  let registration: ServiceWorkerRegistration | null = null;

  const look = () => {
    if (registration?.active) state.value = 'kept';
    // Without an active one the waiting one is the first, and takes over by itself.
    newVersion.value = registration?.waiting != null && registration.active !== null;
  };
  const follow = (coming: ServiceWorker | null) =>
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'redundant' && !registration?.active) state.value = 'failed';
      look();
    });
  container.register(address).then(
    (found) => {
      registration = found;
      follow(found.installing);
      found.addEventListener('updatefound', () => follow(found.installing));
      look();
    },
    () => {
      state.value = 'failed';
    },
  );
  let asked = performance.now();
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || performance.now() - asked < ASK_EVERY_MS) return;
    asked = performance.now();
    // Without a network there is nothing newer to be had.
    registration?.update().catch(() => {});
  });
  return {
    state,
    newVersion,
    takeNewVersion() {
      container.addEventListener('controllerchange', reload, { once: true });
      registration?.waiting?.postMessage('take over');
    },
  };
}
