import { useState } from 'preact/hooks';
import type { Setup } from '../../app/resultTypes';
import { readSetup } from '../../app/setupWork';
import type { Reason } from '../../core/reason';
import { showCount, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { FileChoice } from '../panels/FileChoice';
import { ReasonText } from '../shell/Notices';
import { QueueList } from './QueueList';

/** Many clips filmed in one setup, measured one after the other into the notebook. */
export function QueueSection() {
  const desk = useDesk();
  const { setups, queue, shots, notebook } = desk.session;
  const known = setups.list.value;
  const id = queue.setupId.value ?? shots.draft.value?.setupId ?? null;
  const setup = known.find((one) => one.id === id) ?? known[0] ?? null;
  const clips = queue.clips.value;
  return (
    // Folded away where nobody queues anything and there are shots to look at.
    <details
      class="queue"
      aria-label={t('queue.title')}
      open={clips.length > 0 || notebook.entries.value.length === 0}
    >
      <summary>{t('queue.title')}</summary>
      <div class="stack">
        <p class="muted">{t('queue.what')}</p>
        <Choice setup={setup} />
        <Controls setup={setup} />
        {clips.length > 0 && (
          <>
            <Progress />
            <QueueList />
          </>
        )}
      </div>
    </details>
  );
}

/** Which setup, and what else the clips share. */
function Choice({ setup }: { readonly setup: Setup | null }) {
  const desk = useDesk();
  const { setups, queue } = desk.session;
  const [wrong, setWrong] = useState<Reason | null>(null);
  const read = async (files: readonly File[]) => {
    for (const file of files) {
      const outcome = await readSetup(desk.session, file);
      setWrong(outcome.ok ? null : outcome.reason);
      if (outcome.ok) queue.setupId.value = outcome.value.id;
    }
  };
  return (
    <>
      {setup === null ? (
        <p>{t('queue.setup.none')}</p>
      ) : (
        <ChoiceField
          label={t('queue.setup.label')}
          value={setup.id}
          choices={setups.list.value.map(({ id, name }) => ({ value: id, label: name }))}
          hint={<Shared setup={setup} />}
          onChange={(id) => {
            queue.setupId.value = id;
          }}
        />
      )}
      {wrong !== null && (
        <div class="notice notice-problem" role="alert" data-code={wrong.code}>
          <ReasonText reason={wrong} />
        </div>
      )}
      <div class="row">
        <FileChoice
          label={t('queue.setup.file')}
          name="queue-setup"
          disabled={queue.running.value}
          onChoose={(files) => void read(files)}
        >
          {t('queue.setup.open')}
        </FileChoice>
      </div>
    </>
  );
}

function Shared({ setup }: { readonly setup: Setup }) {
  const draft = useDesk().session.shots.draft.value;
  const frame = { width: `${setup.frame.width}`, height: `${setup.frame.height}` };
  if (draft === null) return <>{t('queue.setup.defaults', frame)}</>;
  const { diameter, mass } = draft.ball;
  return (
    <>
      {t('queue.setup.shared', {
        ...frame,
        diameter: showQuantity(diameter, 'length', 'mm'),
        mass: showQuantity(mass, 'mass', 'g'),
        shot: draft.name || t('queue.setup.unnamed'),
      })}
    </>
  );
}

function Controls({ setup }: { readonly setup: Setup | null }) {
  const { queue } = useDesk().session;
  const [none, setNone] = useState(false);
  const clips = queue.clips.value;
  const running = queue.running.value;
  const waiting = clips.filter(({ state }) => state.kind === 'waiting').length;
  const take = (files: readonly File[]) => setNone(queue.add(files) === 0);
  return (
    <>
      <div class="row">
        <FileChoice label={t('queue.clips')} name="queue-files" onChoose={take}>
          {t('queue.add')}
        </FileChoice>
        <FileChoice label={t('queue.folder')} name="queue-folder" folder onChoose={take}>
          {t('queue.addFolder')}
        </FileChoice>
        {running ? (
          <button type="button" onClick={queue.cancelAll}>
            {t('queue.cancelAll')}
          </button>
        ) : (
          <button
            type="button"
            class="primary"
            disabled={setup === null || waiting === 0}
            onClick={() => setup !== null && void queue.run(setup)}
          >
            {waiting === 0
              ? t('queue.measureClips')
              : t('queue.measure', { count: waiting, number: showCount(waiting) })}
          </button>
        )}
        <button type="button" disabled={queue.ended.value === 0} onClick={queue.clearEnded}>
          {t('queue.clear')}
        </button>
      </div>
      {none && <p role="status">{t('queue.noFootage')}</p>}
    </>
  );
}

function Progress() {
  const { queue } = useDesk().session;
  const clips = queue.clips.value;
  const ended = queue.ended.value;
  const failed = clips.filter(({ state }) => state.kind === 'failed').length;
  const counts = { ended: showCount(ended), all: showCount(clips.length) };
  return (
    <div>
      <p role="status">
        {failed > 0
          ? t('queue.endedFailed', { ...counts, failed: showCount(failed) })
          : t('queue.ended', counts)}
      </p>
      {queue.running.value && (
        <progress value={ended} max={clips.length} aria-label={t('queue.measuring')} />
      )}
    </div>
  );
}
