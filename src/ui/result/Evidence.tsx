import { t } from '../../text/text';
import { useDesk } from '../desk';
import { BudgetTable } from './BudgetTable';
import { DriveWords } from './DriveWords';
import { FitTables } from './FitTables';
import { PositionsTable } from './PositionsTable';
import { ResultPlots } from './ResultPlots';

/** What the statement rests on: plots, budget, fit, and every frame's centre. */
export function Evidence() {
  const desk = useDesk();
  const reduction = desk.session.measuring.reduction.value;
  const step = desk.step.value;
  if (reduction === null || (step !== 'result' && step !== 'ball' && step !== 'seal')) return null;
  const stale = desk.session.measuring.freshness.value === 'measureAgain';
  return (
    <section
      class={`evidence stack ${stale ? 'stale' : ''}`}
      aria-label={t('result.evidence.title')}
    >
      <h2>{t('result.evidence.title')}</h2>
      {stale && (
        <p class="stale-word" role="status">
          {t('result.evidence.stale')}
        </p>
      )}
      <ResultPlots reduction={reduction} />
      {step === 'result' && (
        <>
          <BudgetTable result={reduction.result} />
          <FitTables result={reduction.result} />
          <DriveWords drive={reduction.drive} />
        </>
      )}
      {step !== 'seal' && <PositionsTable positions={reduction.result.positions} />}
    </section>
  );
}
