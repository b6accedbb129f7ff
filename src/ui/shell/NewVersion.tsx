import { useDesk } from '../desk';

/** Offers a newer version; it is never put under the work that is open. */
export function NewVersion() {
  const { offline, session } = useDesk();
  if (!offline.newVersion.value) return null;
  const isBusy = session.queue.running.value || session.measuring.status.value.kind === 'running';
  return (
    <div class="notice notice-warning new-version" role="status" data-role="new-version">
      <p>
        A new version of exitframe is here. It is used from the next start on, or at once after a
        reload; inputs and results are kept.
        {isBusy && ' What is being measured now would be broken off.'}
      </p>
      <div class="row">
        <button type="button" onClick={offline.takeNewVersion}>
          Reload as the new version
        </button>
      </div>
    </div>
  );
}

const WORDS = {
  none: 'This browser does not keep the program: it starts from its address only.',
  saving: 'The program is being kept in this browser, to start without a network…',
  kept: 'The program is kept in this browser: it starts and measures without a network.',
  failed:
    'The program could not be kept in this browser: it starts from its address only. Reload the page to try again.',
};

export function OfflineWords() {
  const { offline } = useDesk();
  return (
    <p class="muted" data-role="offline" data-state={offline.state.value}>
      {WORDS[offline.state.value]}
    </p>
  );
}
