import { useLayoutEffect, useRef } from 'preact/hooks';
import type { StepName } from '../../app/draft';
import type { MistakeName } from '../../app/mistakes';
import { type OwnNumber, type OwnNumbers, ownNumbers } from '../../app/ownNumbers';
import { showList } from '../../text/show';
import { t } from '../../text/text';
import { type Desk, useDesk } from '../desk';
import { Facts } from '../panels/Facts';
import { formulasFor } from './formulas';
import { MathFormula } from './MathTerm';
import { StepNotes } from './StepNotes';
import { letterText, numberText, SYMBOLS } from './symbols';
import { symbolsIn } from './term';

/** What a step works out and why, its formula, the person's own numbers in it, and what commonly goes wrong there. */
export function ExplainPanel({ step }: { readonly step: StepName }) {
  const desk = useDesk();
  const { explainOpen } = desk.preferences;
  return (
    <details
      class="group explain"
      open={explainOpen.value}
      onToggle={(event) => {
        explainOpen.value = event.currentTarget.open;
      }}
    >
      <summary>{t('explain.title')}</summary>
      {explainOpen.value && <Explanation step={step} />}
    </details>
  );
}

function Explanation({ step }: { readonly step: StepName }) {
  const desk = useDesk();
  const numbers = ownNumbersOf(desk);
  const formulas = formulasFor(step, numbers);
  const named = [...new Set(formulas.flatMap(({ left, right }) => [...symbolsIn(right), left]))];
  const missing = named.filter((name) => numbers[name] === null);
  return (
    <div class="stack">
      <p>{t(`explain.what.${step}`)}</p>
      {formulas.map((formula) => (
        <div key={formula.left} class="formula-place">
          <MathFormula formula={formula} numbers={numbers} />
        </div>
      ))}
      <h3>{t('explain.yours')}</h3>
      <Facts
        facts={named.map((name) => [
          t('explain.is', { letter: letterText(name), name: t(`explain.symbol.${name}`) }),
          ownText(name, numbers),
        ])}
      />
      {missing.length > 0 && (
        <p class="muted" data-role="missing">
          {t('explain.missing', {
            list: showList(missing.map((name) => t(`explain.symbol.${name}`))),
          })}
        </p>
      )}
      <StepNotes step={step} numbers={numbers} />
      <UsualMistake step={step} />
    </div>
  );
}

function ownText(name: OwnNumber, numbers: OwnNumbers): string {
  const own = numbers[name];
  return own === null
    ? t('explain.notYet', { step: t(`shell.steps.${SYMBOLS[name].from}`) })
    : numberText(name, own, true);
}

const ownNumbersOf = ({ session: { shots, films, readings, measuring } }: Desk): OwnNumbers =>
  ownNumbers({
    draft: shots.draft.value,
    frameCount: films.film.value?.info.frameCount ?? null,
    clock: readings.clock.value,
    scale: readings.scale.value,
    result: measuring.reduction.value?.result ?? null,
  });

const MISTAKE_OF: Readonly<Record<StepName, MistakeName>> = {
  footage: 'lostFrames',
  clock: 'wrongRate',
  scale: 'wrongPlane',
  ball: 'blur',
  seal: 'parallax',
  result: 'wrongPlane',
  models: 'wrongRate',
};

function UsualMistake({ step }: { readonly step: StepName }) {
  const desk = useDesk();
  const link = useRef<HTMLButtonElement>(null);
  const timing = desk.session.shots.draft.value?.timing;
  // Where time comes from the file's own stamps the rate cannot be mistyped; such cameras mostly read line by line.
  const rolling = step === 'clock' && timing?.source === 'containerTimestamps';
  const name = rolling ? 'rollingShutter' : MISTAKE_OF[step];
  useLayoutEffect(() => {
    // Back from the mistakes: on with what led there.
    if (desk.mistake.value !== name) return;
    desk.mistake.value = null;
    link.current?.focus();
  }, [desk, name]);
  return (
    <>
      <h3>{t('explain.mistake')}</h3>
      <p>{t(`explain.mistakeIn.${rolling ? 'rolling' : step}`)}</p>
      <button
        type="button"
        ref={link}
        onClick={() => {
          desk.mistake.value = name;
          desk.place.value = 'mistakes';
        }}
      >
        {t('explain.toMistake', { title: t(`mistakes.${name}.title`) })}
      </button>
    </>
  );
}
