import { useEffect } from 'preact/hooks';
import { GROUPINGS, type Grouping } from '../../app/notebookTable';
import { isRendered } from '../../app/samples';
import { formatCount } from '../../core/format';
import { saveNotebook, saveTable } from '../actions';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { FileChoice } from '../panels/FileChoice';
import { WorkState } from '../panels/WorkState';
import { QueueSection } from '../queue/QueueSection';
import { ReasonText } from '../shell/Notices';
import { FitSection } from './FitSection';
import { GroupTable } from './GroupTable';
import { NotebookPlot } from './NotebookPlot';
import { ShotTable } from './ShotTable';

const GROUP_WORDS: Readonly<Record<Grouping, string>> = {
  none: 'not grouped',
  residualPressure: 'residual pressure',
  ball: 'ball',
  barrelLength: 'barrel length',
};

/** Many shots: a table of them, what they say together, and how the speed goes with the launcher. */
export function NotebookView() {
  const { notebook } = useDesk().session;
  useEffect(() => {
    notebook.shown.value = true;
    return () => {
      notebook.shown.value = false;
    };
  }, [notebook]);
  const empty = notebook.entries.value.length === 0;
  return (
    <main class="notebook evidence stack" aria-labelledby="notebook-title">
      <div class="notebook-head">
        <h2 id="notebook-title">Notebook</h2>
        {notebook.entries.value.some(({ notes }) => isRendered(notes)) && (
          <span class="tag">with rendered shots, Brinewick Teaching Laboratory</span>
        )}
        {notebook.unsaved.value && <span class="tag">not saved to a file</span>}
      </div>
      <Files />
      <Told />
      <QueueSection />
      {empty ? (
        <Empty />
      ) : (
        <>
          <Choice />
          <ShotTable />
          <GroupTable />
          <NotebookPlot />
          <FitSection />
        </>
      )}
    </main>
  );
}

function Files() {
  const desk = useDesk();
  const { notebook } = desk.session;
  const take = (files: readonly File[]) => void notebook.add(files);
  const empty = notebook.entries.value.length === 0;
  return (
    <div class="row">
      <FileChoice label="Folder of shots" name="notebook-folder" primary folder onChoose={take}>
        Add a folder…
      </FileChoice>
      <FileChoice
        label="Shot and result files, a notebook or a table"
        name="notebook-files"
        onChoose={take}
      >
        Add files…
      </FileChoice>
      <button type="button" disabled={empty} onClick={() => void saveNotebook(desk)}>
        Save notebook…
      </button>
      <button type="button" disabled={empty} onClick={() => void saveTable(desk)}>
        Save table (CSV)…
      </button>
    </div>
  );
}

/** How far reading is, what it brought, and what could not be read. */
function Told() {
  const { notebook } = useDesk().session;
  const { reading, problems, news, cancelReading } = notebook;
  const wrong = problems.value;
  return (
    <>
      <WorkState work={reading.value} doing="Reading the shots" onCancel={cancelReading}>
        {() => null}
      </WorkState>
      {news.value !== null && reading.value.kind !== 'running' && <p role="status">{news.value}</p>}
      {wrong.length > 0 && (
        <details class="notice notice-problem" open={wrong.length <= MOST_SHOWN}>
          <summary>
            {formatCount(wrong.length)} {wrong.length === 1 ? 'file' : 'files'} with a problem
          </summary>
          <ul class="notebook-problems">
            {wrong.map(({ path, reason }) => (
              <li key={`${path}${reason.code}`} data-code={reason.code}>
                <strong>{path}</strong>
                <ReasonText reason={reason} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** More problems than this are folded away. */
const MOST_SHOWN = 3;

function Empty() {
  return (
    <div class="models-empty stack">
      <p>
        Many shots side by side: what the launcher repeats, how its speed goes with barrel length
        and pressure, and which shots stand apart.
      </p>
      <p class="muted">
        Add a folder with shot files and their results (NAME.shot.json and NAME.result.json; films
        beside them can then be opened from here), a notebook saved before, or a table. The Result
        step adds the shot that is open. Files can be dropped here too.
      </p>
      <p>
        <SampleSeries />
      </p>
      <p class="muted">
        Twelve rendered shots of Launcher B at four barrel lengths, reduced by this tool; two of
        their films can be opened. Brinewick Teaching Laboratory: no real shots.
      </p>
    </div>
  );
}

/** One click to many shots. */
function SampleSeries() {
  const { notebook } = useDesk().session;
  return (
    <button
      type="button"
      disabled={notebook.reading.value.kind === 'running'}
      onClick={() => void notebook.addSampleSeries()}
    >
      Open the sample series
    </button>
  );
}

function Choice() {
  const { notebook } = useDesk().session;
  const { filter, grouping, rows, counted, entries } = notebook;
  const uncounted = entries.value.some(({ used }) => !used);
  return (
    <div class="notebook-choice">
      <div class="field">
        <label for="notebook-filter">Only shots whose name or notes hold</label>
        <input
          id="notebook-filter"
          type="search"
          value={filter.value}
          onInput={(event) => {
            filter.value = event.currentTarget.value;
          }}
        />
      </div>
      <ChoiceField
        label="Grouped by"
        value={grouping.value}
        choices={GROUPINGS.map((value) => ({ value, label: GROUP_WORDS[value] }))}
        onChange={(next) => {
          grouping.value = next;
        }}
      />
      <p class="muted" role="status">
        {formatCount(rows.value.length)} of {formatCount(entries.value.length)} shots shown,{' '}
        {formatCount(counted.value.length)} of them counted.
      </p>
      <button type="button" disabled={!uncounted} onClick={notebook.dropUncounted}>
        Take out shots not counted
      </button>
    </div>
  );
}
