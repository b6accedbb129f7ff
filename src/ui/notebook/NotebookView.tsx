import { useEffect } from 'preact/hooks';
import type { NotebookNews } from '../../app/notebook';
import { GROUPINGS } from '../../app/notebookTable';
import { isRendered } from '../../app/samples';
import { showCount } from '../../text/show';
import { t } from '../../text/text';
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
        <h2 id="notebook-title">{t('notebook.title')}</h2>
        {notebook.entries.value.some(({ notes }) => isRendered(notes)) && (
          <span class="tag">{t('notebook.rendered')}</span>
        )}
        {notebook.unsaved.value && <span class="tag">{t('notebook.unsaved')}</span>}
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
      <FileChoice
        label={t('notebook.files.folder')}
        name="notebook-folder"
        primary
        folder
        onChoose={take}
      >
        {t('notebook.files.addFolder')}
      </FileChoice>
      <FileChoice label={t('notebook.files.files')} name="notebook-files" onChoose={take}>
        {t('notebook.files.add')}
      </FileChoice>
      <button type="button" disabled={empty} onClick={() => void saveNotebook(desk)}>
        {t('notebook.files.save')}
      </button>
      <button type="button" disabled={empty} onClick={() => void saveTable(desk)}>
        {t('notebook.files.saveTable')}
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
      <WorkState work={reading.value} doing={t('notebook.files.reading')} onCancel={cancelReading}>
        {() => null}
      </WorkState>
      {news.value !== null && reading.value.kind !== 'running' && (
        <p role="status">{newsWords(news.value)}</p>
      )}
      {wrong.length > 0 && (
        <details class="notice notice-problem" open={wrong.length <= MOST_SHOWN}>
          <summary>
            {t('notebook.files.problems', {
              count: wrong.length,
              number: showCount(wrong.length),
            })}
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

function newsWords({ shots, replaced }: NotebookNews): string {
  const values = { shots, number: showCount(shots), replaced, replacedNumber: showCount(replaced) };
  return t(replaced === 0 ? 'notebook.files.read' : 'notebook.files.readReplacing', values);
}

/** More problems than this are folded away. */
const MOST_SHOWN = 3;

function Empty() {
  return (
    <div class="models-empty stack">
      <p>{t('notebook.empty.what')}</p>
      <p class="muted">{t('notebook.empty.add')}</p>
      <p>
        <SampleSeries />
      </p>
      <p class="muted">{t('notebook.empty.sample')}</p>
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
      {t('notebook.empty.open')}
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
        <label for="notebook-filter">{t('notebook.choice.filter')}</label>
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
        label={t('notebook.choice.groupedBy')}
        value={grouping.value}
        choices={GROUPINGS.map((value) => ({
          value,
          label: t(`notebook.choice.grouping.${value}`),
        }))}
        onChange={(next) => {
          grouping.value = next;
        }}
      />
      <p class="muted" role="status">
        {t('notebook.choice.shown', {
          shown: showCount(rows.value.length),
          all: showCount(entries.value.length),
          counted: showCount(counted.value.length),
        })}
      </p>
      <button type="button" disabled={!uncounted} onClick={notebook.dropUncounted}>
        {t('notebook.choice.takeOut')}
      </button>
    </div>
  );
}
