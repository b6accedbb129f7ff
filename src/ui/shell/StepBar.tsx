import { type Figure, type StepSummary, summarise } from '../../app/steps';
import { showAs } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Icon } from './Icon';

const figureWords = (figure: Figure): string =>
  'number' in figure
    ? t(`shell.figure.${figure.of}`, { number: showAs(figure.number) })
    : t(`shell.figure.${figure.of}`);

/** The steps in the order of the work; read along, they are a summary of the shot. */
export function StepBar() {
  const desk = useDesk();
  const steps = summarise(desk.session, desk.preferences.speedUnit.value);
  return (
    <nav class="steps" aria-label={t('shell.steps.label')}>
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
        <span class="word">{ordinal} </span>
        {t(`shell.steps.${step.name}`)}
      </span>
      <span class="step-state">
        <Icon name={step.state} />
        <span class="word">{t(`shell.state.${step.state}`)}</span>
      </span>
      <span class="step-figure">{figureWords(step.figure)}</span>
    </button>
  );
}
