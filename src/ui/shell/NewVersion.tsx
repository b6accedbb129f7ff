import { t } from '../../text/text';
import { useDesk } from '../desk';

/** Offers a newer version; it is never put under the work that is open. */
export function NewVersion() {
  const { offline, session } = useDesk();
  if (!offline.newVersion.value) return null;
  const isBusy = session.queue.running.value || session.measuring.status.value.kind === 'running';
  return (
    <div class="notice notice-warning new-version" role="status">
      <p>
        {t('shell.offline.offer')} {isBusy && t('shell.offline.busy')}
      </p>
      <button type="button" onClick={offline.takeNewVersion}>
        {t('shell.offline.take')}
      </button>
    </div>
  );
}

/** Whether the tool starts without a network. */
export function OfflineWords() {
  const state = useDesk().offline.state.value;
  return (
    <p class="muted" data-role="offline" data-state={state}>
      {t(`shell.offline.${state}`)}
    </p>
  );
}
