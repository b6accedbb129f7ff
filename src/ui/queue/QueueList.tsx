import { openQueued } from '../../app/notebookShots';
import type { QueuedClip, QueueState } from '../../app/queue';
import { expanded, isAvailable } from '../../core/estimate';
import { formatQuantity } from '../../core/format';
import { useDesk } from '../desk';
import { stageWords } from '../panels/Measure';
import { ReasonText } from '../shell/Notices';

/** Every clip: how far it is, what came of it, and what can be done. */
export function QueueList() {
  const { queue } = useDesk().session;
  return (
    <section
      class="queue-list"
      aria-label="Clips in the queue"
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
      return <span class="muted">waiting</span>;
    case 'cancelled':
      return <span class="muted">cancelled</span>;
    case 'measuring': {
      if (state.stage === null) return <>Opening…</>;
      const words = stageWords(state.stage);
      return (
        <>
          {words}: {Math.round(state.share * 100)} %
          <progress value={state.share} aria-label={words} />
        </>
      );
    }
    case 'failed':
      return (
        <div data-code={state.reason.code}>
          <strong>failed</strong>
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
        <>done: {formatQuantity(expanded(exitVelocity), 'speed', unit)}</>
      ) : (
        <>
          done, without a speed: <ReasonText reason={exitVelocity.unavailable} />
        </>
      )}
      {others > 0 && (
        <span class="muted">
          {' '}
          ({others} {others === 1 ? 'warning' : 'warnings'})
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
        <button type="button" aria-label={`Cancel ${name}`} onClick={() => queue.cancel(id)}>
          Cancel
        </button>
      )}
      {(state.kind === 'failed' || state.kind === 'cancelled') && (
        <button type="button" aria-label={`Queue ${name} again`} onClick={() => queue.again(id)}>
          Queue again
        </button>
      )}
      {!isUnderWay && (
        <button
          type="button"
          aria-label={`Open ${name}`}
          onClick={() => {
            desk.place.value = 'shot';
            desk.step.value = 'footage';
            void openQueued(desk.session, clip);
          }}
        >
          Open
        </button>
      )}
    </div>
  );
}
