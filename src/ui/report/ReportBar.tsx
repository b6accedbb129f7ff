import type { RefObject } from 'preact';
import type { Reduction } from '../../app/resultTypes';
import { fileNameOf, saveFile } from '../../app/saving';
import { csvText } from '../../core/csv';
import type { Extent, ReportDocument } from '../../report/document';
import { budgetSheet, centresSheet, resultSheet } from '../../report/sheets';
import { quotable } from '../../report/statement';
import { t } from '../../text/text';
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

const EXTENTS = ['summary', 'full'] as const;

const SHEETS = { result: resultSheet, centres: centresSheet, budget: budgetSheet } as const;
const SHEET_NAMES = ['result', 'centres', 'budget'] as const;

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
    const text = pageOf(sheet.current, t('report.pageTitle', { shot: document.title }));
    await saveFile(`${name}.report.html`, text, t('report.bar.kind.page'), 'text/html');
  };
  const saveSheet = (key: keyof typeof SHEETS) =>
    saveFile(
      `${name}.${key}.csv`,
      csvText(SHEETS[key](reduction.result)),
      t('report.bar.kind.table'),
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
          {t('report.backToShot')}
        </button>
        <fieldset class="row" aria-label={t('report.bar.extent')}>
          {EXTENTS.map((value) => (
            <button
              key={value}
              type="button"
              aria-pressed={extent === value}
              onClick={() => onExtent(value)}
            >
              {t(`report.bar.${value}`)}
            </button>
          ))}
        </fieldset>
        <button type="button" class="primary" disabled={!ready} onClick={() => window.print()}>
          {t('report.bar.print')}
        </button>
        <button type="button" disabled={!ready} onClick={() => attempt(savePage)}>
          {t('report.bar.savePage')}
        </button>
        <button type="button" onClick={() => attempt(copy)}>
          {t('report.bar.copy')}
        </button>
        {SHEET_NAMES.map((key) => (
          <button key={key} type="button" onClick={() => attempt(() => saveSheet(key))}>
            {t(`report.bar.${key}`)}
          </button>
        ))}
        <button type="button" onClick={() => void saveResult(desk)}>
          {t('report.bar.resultJson')}
        </button>
        <button type="button" onClick={() => void saveShot(desk)}>
          {t('report.bar.shotFile')}
        </button>
      </div>
      <Notices step="result" />
    </div>
  );
}
