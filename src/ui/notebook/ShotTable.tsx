import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { openNotebookShot } from '../../app/notebookShots';
import type { SortKey } from '../../app/notebookTable';
import type { NotebookEntry } from '../../app/resultTypes';
import { type Estimate, expanded, isAvailable, type Reported } from '../../core/estimate';
import type { UnitKind } from '../../core/unitTable';
import { reasonWords } from '../../text/reasonWords';
import { showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';

/** Height of a row and of the window on them, CSS px. Only rows in the window, and some around it, are in the page. */
const ROW = 34;
const WINDOW = 420;
const AROUND = 8;

interface ColumnSpec {
  readonly key: SortKey;
  cell(entry: NotebookEntry, speedUnit: string): ComponentChildren;
}

const reported = (one: Reported, kind: UnitKind, unit: string) =>
  isAvailable(one) ? (
    showQuantity(expanded(one), kind, unit)
  ) : (
    <span class="muted" title={reasonWords(one.unavailable).message}>
      {t('notebook.table.none')}
    </span>
  );

const condition = (estimate: Estimate | null, kind: UnitKind, unit: string) =>
  estimate === null ? <span class="muted">–</span> : showQuantity(estimate, kind, unit, false);

const COLUMNS: readonly ColumnSpec[] = [
  { key: 'name', cell: ({ name }) => name },
  {
    key: 'exitVelocity',
    cell: ({ exitVelocity }, unit) => reported(exitVelocity, 'speed', unit),
  },
  { key: 'lead', cell: ({ lead }) => reported(lead, 'time', 'ms') },
  {
    key: 'barrelLength',
    cell: ({ conditions }) => condition(conditions.barrelLength, 'length', 'm'),
  },
  {
    key: 'residualPressure',
    cell: ({ conditions }) => condition(conditions.residualPressure, 'pressure', 'hPa'),
  },
  {
    key: 'ballDiameter',
    cell: ({ conditions }) => condition(conditions.ballDiameter, 'length', 'mm'),
  },
  {
    key: 'ballMass',
    cell: ({ conditions }) => condition(conditions.ballMass, 'mass', 'g'),
  },
];

/** Every shot a row; sorted by its head, counted by its tick. */
export function ShotTable() {
  const desk = useDesk();
  const { notebook } = desk.session;
  const [scrolled, setScrolled] = useState(0);
  const rows = notebook.rows.value;
  const first = Math.max(0, Math.min(Math.floor(scrolled / ROW) - AROUND, rows.length - 1));
  const last = Math.min(rows.length, first + Math.ceil(WINDOW / ROW) + 2 * AROUND);
  return (
    <section
      class="notebook-table scroll-x"
      style={{ maxHeight: `${WINDOW}px` }}
      aria-label={t('notebook.table.label')}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys scroll it once it is focused
      tabIndex={0}
      onScroll={(event) => setScrolled(event.currentTarget.scrollTop)}
    >
      <table aria-rowcount={rows.length + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">
              <span class="hidden-text">{t('notebook.table.counted')}</span>
            </th>
            {COLUMNS.map((column) => (
              <Head key={column.key} of={column.key} />
            ))}
            <th scope="col">{t('notebook.table.film')}</th>
          </tr>
        </thead>
        <tbody>
          {first > 0 && <Gap rows={first} />}
          {rows.slice(first, last).map((entry, i) => (
            <Row key={entry.name} entry={entry} index={first + i} />
          ))}
          {last < rows.length && <Gap rows={rows.length - last} />}
        </tbody>
      </table>
    </section>
  );
}

/** Room of rows that are not in the page. */
const Gap = ({ rows }: { readonly rows: number }) => (
  <tr class="notebook-gap">
    <td colSpan={COLUMNS.length + 2} style={{ height: `${rows * ROW}px`, padding: 0 }} />
  </tr>
);

function Head({ of: key }: { readonly of: SortKey }) {
  const { sorting } = useDesk().session.notebook;
  const { key: now, upwards } = sorting.value;
  const active = key === now;
  return (
    <th
      scope="col"
      class={key === 'name' ? '' : 'number'}
      aria-sort={active ? (upwards ? 'ascending' : 'descending') : 'none'}
    >
      <button
        type="button"
        class="plain"
        onClick={() => {
          sorting.value = { key, upwards: active ? !upwards : true };
        }}
      >
        {t(`notebook.table.column.${key}`)}
        <span aria-hidden="true">{active ? (upwards ? ' ▲' : ' ▼') : ''}</span>
      </button>
    </th>
  );
}

function Row({ entry, index }: { readonly entry: NotebookEntry; readonly index: number }) {
  const desk = useDesk();
  const { notebook } = desk.session;
  const unit = desk.preferences.speedUnit.value;
  return (
    <tr
      aria-rowindex={index + 2}
      class={entry.used ? '' : 'notebook-uncounted'}
      style={{ height: `${ROW}px` }}
    >
      <td>
        <input
          type="checkbox"
          aria-label={t('notebook.table.count', { name: entry.name })}
          checked={entry.used}
          onChange={(event) => notebook.setUsed(entry.name, event.currentTarget.checked)}
        />
      </td>
      {COLUMNS.map(({ key, cell }) =>
        key === 'name' ? (
          <th key={key} scope="row" title={entry.notes}>
            {cell(entry, unit)}
          </th>
        ) : (
          <td key={key} class="number">
            {cell(entry, unit)}
          </td>
        ),
      )}
      <td>
        {entry.shot === null ? (
          <span class="muted">{t('notebook.table.fromTable')}</span>
        ) : (
          <button
            type="button"
            aria-label={t('notebook.table.openFilm', { name: entry.name })}
            onClick={() => {
              desk.place.value = 'shot';
              desk.step.value = 'footage';
              void openNotebookShot(desk.session, entry);
            }}
          >
            {t('notebook.table.open')}
          </button>
        )}
      </td>
    </tr>
  );
}
