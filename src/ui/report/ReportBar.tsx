import type { RefObject } from 'preact';
import type { Reduction } from '../../app/resultTypes';
import { fileNameOf, saveFile } from '../../app/saving';
import { csvText } from '../../core/csv';
import type { Extent, ReportDocument } from '../../report/document';
import { budgetSheet, centresSheet, resultSheet } from '../../report/sheets';
import { quotable } from '../../report/statement';
import { saveResult, saveShot } from '../actions';
import { useDesk } from '../desk';
import { Notices } from '../shell/Notices';

interface ReportBarProps {
  readonly extent: Extent;
  onExtent(extent: Extent): void;
  readonly document: ReportDocument;
  readonly reduction: Reduction;
  /** Every picture is there. */
  readonly ready: boolean;
  readonly sheet: RefObject<HTMLElement | null>;
}

const EXTENTS = [
  { value: 'summary', label: 'One page' },
  { value: 'full', label: 'Full report' },
] as const;

const SHEETS = {
  result: { label: 'Result CSV…', sheet: resultSheet },
  centres: { label: 'Centres CSV…', sheet: centresSheet },
  budget: { label: 'Budget CSV…', sheet: budgetSheet },
} as const;

/** What can be done with the report; it stays on the screen. */
export function ReportBar(props: ReportBarProps) {
  const { extent, onExtent, document, reduction, ready, sheet } = props;
  const desk = useDesk();
  const { notices } = desk.session;
  const name = fileNameOf(document.title);
  const attempt = (work: () => Promise<unknown>) =>
    void work().catch((error: unknown) => notices.report('result', error));
  const savePage = async () => {
    if (sheet.current === null) return;
    const { pageOf } = await import('./exportPage');
    const text = pageOf(sheet.current, `${document.title} report`);
    await saveFile(`${name}.report.html`, text, 'Web page', 'text/html');
  };
  const saveSheet = (key: keyof typeof SHEETS) =>
    saveFile(
      `${name}.${key}.csv`,
      csvText(SHEETS[key].sheet(reduction.result)),
      'Table',
      'text/csv',
    );
  const copy = () =>
    navigator.clipboard.writeText(
      quotable(reduction.result, desk.preferences.speedUnit.value).join(' '),
    );
  return (
    <div class="report-bar" data-screen-only>
      <div class="row">
        <button
          type="button"
          onClick={() => {
            desk.place.value = 'shot';
          }}
        >
          Back to the shot
        </button>
        <fieldset class="row" aria-label="Extent">
          {EXTENTS.map(({ value, label }) => (
            <button
              key={value}
              type="button"
              aria-pressed={extent === value}
              onClick={() => onExtent(value)}
            >
              {label}
            </button>
          ))}
        </fieldset>
        <button type="button" class="primary" disabled={!ready} onClick={() => window.print()}>
          Print or save as PDF…
        </button>
        <button type="button" disabled={!ready} onClick={() => attempt(savePage)}>
          Save as web page…
        </button>
      </div>
      <div class="row">
        <button type="button" onClick={() => attempt(copy)}>
          Copy the statement
        </button>
        {Object.entries(SHEETS).map(([key, { label }]) => (
          <button
            key={key}
            type="button"
            onClick={() => attempt(() => saveSheet(key as keyof typeof SHEETS))}
          >
            {label}
          </button>
        ))}
        <button type="button" onClick={() => void saveResult(desk)}>
          Result JSON…
        </button>
        <button type="button" onClick={() => void saveShot(desk)}>
          Shot file…
        </button>
      </div>
      <Notices step="result" />
    </div>
  );
}
