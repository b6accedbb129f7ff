import { useEffect } from 'preact/hooks';
import { t } from '../../text/text';
import { savePlan } from '../actions';
import { useDesk } from '../desk';
import { TextField } from '../fields/TextField';
import { usePlanEdits } from './edits';
import { PlanInputs } from './PlanInputs';
import { PlanOutcome } from './PlanOutcome';
import { PlanSweep } from './PlanSweep';

/** The next shot: its settings, what it should give, and which others would give more. */
export function PlanView() {
  const desk = useDesk();
  const { planning } = desk.session;
  const edits = usePlanEdits();
  useEffect(() => {
    planning.shown.value = true;
    return () => {
      planning.shown.value = false;
    };
  }, [planning]);
  const ready = planning.judgement.value?.shot.ok === true && !planning.isStale.value;
  return (
    <main class="plan evidence stack" aria-labelledby="plan-title">
      <h2 id="plan-title">{t('plan.title')}</h2>
      <p class="notice notice-warning">{t('models.caution')}</p>
      <div class="row plan-head">
        <TextField
          label={t('plan.name')}
          value={planning.plan.value.name}
          placeholder={t('plan.unnamed')}
          onCommit={(name) => edits.plan({ name })}
        />
        <button type="button" class="primary" disabled={!ready} onClick={() => void savePlan(desk)}>
          {t('plan.use')}
        </button>
        {planning.hasShot.value && (
          <button type="button" onClick={() => planning.takeOver(edits.named('other'))}>
            {t('plan.beginFromOpen')}
          </button>
        )}
      </div>
      <div class="plan-bench">
        <section class="plan-inputs stack" aria-label={t('plan.settings')}>
          <PlanInputs />
        </section>
        <section class="plan-outcome stack" aria-label={t('plan.expect')}>
          <PlanOutcome />
          <PlanSweep />
        </section>
      </div>
    </main>
  );
}
