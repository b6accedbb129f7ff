import { openQueued } from '../../app/notebookShots';
import type { QueuedClip, QueueState } from '../../app/queue';
import { expanded, isAvailable } from '../../core/estimate';
import { showNumberAt, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { stageWords } from '../panels/Measure';
import { ReasonText } from '../shell/Notices';

/** Every clip: how far it is, what came of it, and what can be done. */
export function QueueList() {
  const { queue } = useDesk().session;
  return (
    <section
      class="queue-list"
      aria-label={t('queue.list')}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys scroll it once it is focused
      tabIndex={0}
    >
      <ul>
        {queue.clips.value.map((clip) => (
          <li key={clip.id} data-state={clip.state.kind}>
            <span class="queue-name">{clip.name}</span>
            <div class="queue-state">
              <State state={clip.state} />
            </div>
            <Actions clip={clip} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function State({ state }: { readonly state: QueueState }) {
  const unit = useDesk().preferences.speedUnit.value;
  switch (state.kind) {
    case 'waiting':
      return <span class="muted">{t('queue.state.waiting')}</span>;
    case 'cancelled':
      return <span class="muted">{t('queue.state.cancelled')}</span>;
    case 'measuring': {
      if (state.stage === null) return <>{t('queue.state.opening')}</>;
      const words = stageWords(state.stage);
      return (
        <>
          {t('panels.progress', {
            doing: words,
            percent: showNumberAt(Math.round(state.share * 100), 3),
          })}
          <progress value={state.share} aria-label={words} />
        </>
      );
    }
    case 'failed':
      return (
        <div data-code={state.reason.code}>
          <strong>{t('queue.state.failed')}</strong>
          <ReasonText reason={state.reason} />
        </div>
      );
    case 'done':
      return <Done measured={state.measured} unit={unit} />;
  }
}

type Measured = Extract<QueueState, { kind: 'done' }>['measured'];

function Done({ measured, unit }: { readonly measured: Measured; readonly unit: string }) {
  const { exitVelocity, warnings } = measured.result;
  const moved = warnings.find(({ code }) => code === 'cameraMoved');
  const others = warnings.length - (moved === undefined ? 0 : 1);
  return (
    <>
      {isAvailable(exitVelocity) ? (
        t('queue.state.done', { speed: showQuantity(expanded(exitVelocity), 'speed', unit) })
      ) : (
        <>
          {t('queue.state.doneWithout')} <ReasonText reason={exitVelocity.unavailable} />
        </>
      )}
      {others > 0 && (
        <span class="muted">
          {' '}
          {t('queue.state.warnings', { count: others, number: `${others}` })}
        </span>
      )}
      {moved !== undefined && (
        <div class="queue-moved" data-code="cameraMoved">
          <ReasonText reason={moved} />
        </div>
      )}
    </>
  );
}

function Actions({ clip }: { readonly clip: QueuedClip }) {
  const desk = useDesk();
  const { queue } = desk.session;
  const { id, name, state } = clip;
  const isUnderWay = state.kind === 'waiting' || state.kind === 'measuring';
  return (
    <div class="row queue-actions">
      {isUnderWay && (
        <button
          type="button"
          aria-label={t('queue.cancelOne', { name })}
          onClick={() => queue.cancel(id)}
        >
          {t('queue.cancel')}
        </button>
      )}
      {(state.kind === 'failed' || state.kind === 'cancelled') && (
        <button
          type="button"
          aria-label={t('queue.againOne', { name })}
          onClick={() => queue.again(id)}
        >
          {t('queue.again')}
        </button>
      )}
      {!isUnderWay && (
        <button
          type="button"
          aria-label={t('queue.openOne', { name })}
          onClick={() => {
            desk.place.value = 'shot';
            desk.step.value = 'footage';
            void openQueued(desk.session, clip);
          }}
        >
          {t('queue.open')}
        </button>
      )}
    </div>
  );
}
