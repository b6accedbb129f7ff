import { useState } from 'preact/hooks';
import type { Setup } from '../../app/resultTypes';
import { readSetup } from '../../app/setupWork';
import { formatCount, formatQuantity } from '../../core/format';
import type { Reason } from '../../core/reason';
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
      aria-label="Queue of clips"
      open={clips.length > 0 || notebook.entries.value.length === 0}
    >
      <summary>Queue of clips</summary>
      <div class="stack">
        <p class="muted">
          Clips filmed in one setup, measured one after the other with its clock, scale, lens, plane
          and muzzle. Each goes into the notebook; each says if the camera has moved.
        </p>
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
        <p>
          No setup is known here yet. Calibrate one shot (clock, scale, muzzle) and save it as a
          setup on its Footage step, or open a setup file.
        </p>
      ) : (
        <ChoiceField
          label="Setup of the clips"
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
          label="Setup file"
          name="queue-setup"
          disabled={queue.running.value}
          onChoose={(files) => void read(files)}
        >
          Open a setup file…
        </FileChoice>
      </div>
    </>
  );
}

function Shared({ setup }: { readonly setup: Setup }) {
  const draft = useDesk().session.shots.draft.value;
  const { width, height } = setup.frame;
  const frames = `For frames of ${width} × ${height} px. `;
  if (draft === null) return <>{frames}Ball and air as the shot file's defaults.</>;
  const { diameter, mass } = draft.ball;
  return (
    <>
      {frames}Ball ({formatQuantity(diameter, 'length', 'mm')}, {formatQuantity(mass, 'mass', 'g')}
      ), air, launcher and fit as in the shot that is open, {draft.name || 'unnamed'}.
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
        <FileChoice label="Clips to measure" name="queue-files" onChoose={take}>
          Add clips…
        </FileChoice>
        <FileChoice label="Folder of clips" name="queue-folder" folder onChoose={take}>
          Add a folder of clips…
        </FileChoice>
        {running ? (
          <button type="button" onClick={queue.cancelAll}>
            Cancel all
          </button>
        ) : (
          <button
            type="button"
            class="primary"
            disabled={setup === null || waiting === 0}
            onClick={() => setup !== null && void queue.run(setup)}
          >
            {waiting === 0
              ? 'Measure clips'
              : `Measure ${formatCount(waiting)} ${waiting === 1 ? 'clip' : 'clips'}`}
          </button>
        )}
        <button type="button" disabled={queue.ended.value === 0} onClick={queue.clearEnded}>
          Clear those ended
        </button>
      </div>
      {none && <p role="status">No footage was found among those files.</p>}
    </>
  );
}

function Progress() {
  const { queue } = useDesk().session;
  const clips = queue.clips.value;
  const ended = queue.ended.value;
  const failed = clips.filter(({ state }) => state.kind === 'failed').length;
  const words =
    `${formatCount(ended)} of ${formatCount(clips.length)} clips ended` +
    (failed > 0 ? `, ${formatCount(failed)} of them failed.` : '.');
  return (
    <div>
      <p role="status">{words}</p>
      {queue.running.value && (
        <progress value={ended} max={clips.length} aria-label="Measuring the queue" />
      )}
    </div>
  );
}
