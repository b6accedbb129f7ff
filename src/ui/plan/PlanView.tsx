import { useEffect } from 'preact/hooks';
import { PREDICTIONS_CAUTION } from '../../app/cautions';
import { savePlan } from '../actions';
import { useDesk } from '../desk';
import { TextField } from '../fields/TextField';
import { PlanInputs } from './PlanInputs';
import { PlanOutcome } from './PlanOutcome';
import { PlanSweep } from './PlanSweep';

/** The next shot: its settings, what it should give, and which others would give more. */
export function PlanView() {
  const desk = useDesk();
  const { planning } = desk.session;
  useEffect(() => {
    planning.shown.value = true;
    return () => {
      planning.shown.value = false;
    };
  }, [planning]);
  const ready = planning.judgement.value?.shot.ok === true && !planning.isStale.value;
  return (
    <main class="plan evidence stack" aria-labelledby="plan-title">
      <h2 id="plan-title">Plan a shot</h2>
      <p class="notice notice-warning">{PREDICTIONS_CAUTION}</p>
      <div class="row plan-head">
        <TextField
          label="Name of the shot"
          value={planning.plan.value.name}
          onCommit={(name) => planning.change({ name })}
        />
        <button type="button" class="primary" disabled={!ready} onClick={() => void savePlan(desk)}>
          Use for the next shot: save its shot file…
        </button>
        {planning.hasShot.value && (
          <button type="button" onClick={planning.takeOver}>
            Begin from the shot that is open
          </button>
        )}
        <button type="button" disabled={!planning.canGoBack.value} onClick={planning.goBack}>
          Back to the plan before
        </button>
      </div>
      <div class="plan-bench">
        <section class="plan-inputs stack" aria-label="Settings of the plan">
          <PlanInputs />
        </section>
        <section class="plan-outcome stack" aria-label="What to expect">
          <PlanOutcome />
          <PlanSweep />
        </section>
      </div>
    </main>
  );
}
