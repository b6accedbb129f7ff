import { STEP_TITLES, type StepState, type StepSummary, summarise } from '../../app/steps';
import { useDesk } from '../desk';
import { Icon } from './Icon';

const STATE_WORDS: Readonly<Record<StepState, string>> = {
  done: 'done',
  open: 'open',
  needsYou: 'needs you',
};

/** The steps in the order of the work; read along, they are a summary of the shot. */
export function StepBar() {
  const desk = useDesk();
  const steps = summarise(desk.session, desk.preferences.speedUnit.value);
  return (
    <nav class="steps" aria-label="Steps">
      <ol>
        {steps.map((step, i) => (
          <li key={step.name}>
            <StepButton step={step} ordinal={i + 1} />
          </li>
        ))}
      </ol>
    </nav>
  );
}

function StepButton({ step, ordinal }: { step: StepSummary; ordinal: number }) {
  const desk = useDesk();
  return (
    <button
      type="button"
      class={`step step-${step.state}`}
      aria-current={desk.step.value === step.name ? 'step' : undefined}
      data-step={step.name}
      onClick={() => {
        desk.step.value = step.name;
        desk.preferences.sheetOpen.value = true;
      }}
    >
      <span class="step-title">
        {ordinal} {STEP_TITLES[step.name]}
      </span>
      <span class="step-state">
        <Icon name={step.state} />
        {STATE_WORDS[step.state]}
      </span>
      <span class="step-figure">{step.figure}</span>
    </button>
  );
}
