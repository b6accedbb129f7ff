import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { missingInputs, type StepName } from '../../app/draft';
import { nextStep } from '../../app/steps';
import { reasonWords } from '../../text/reasonWords';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ExplainPanel } from '../explain/ExplainPanel';
import { Notices, ReasonText } from '../shell/Notices';

/** The side sheet of one step: what is missing and what went wrong first, then the inputs. */
export function Panel(props: {
  readonly step: StepName;
  readonly title: string;
  readonly children: ComponentChildren;
}) {
  const { step, title, children } = props;
  const draft = useDesk().session.shots.draft.value;
  const missing = draft === null ? [] : missingInputs(draft).filter((one) => one.step === step);
  return (
    <section class="panel stack" aria-labelledby={`panel-${step}`}>
      <h2 id={`panel-${step}`}>{title}</h2>
      <Notices step={step} />
      {missing.map((one) => (
        <div key={one.reason.code} class="notice notice-missing" data-code={one.reason.code}>
          <ReasonText reason={one.reason} />
        </div>
      ))}
      <Next step={step} />
      <ExplainPanel step={step} />
      {children}
    </section>
  );
}

/** Leads on to the step that waits, once this one lacks nothing. */
function Next({ step }: { readonly step: StepName }) {
  const desk = useDesk();
  const next = nextStep(desk.session, step);
  if (next === null) return null;
  const { step: to, why } = next;
  return (
    <div class="next">
      <p>{typeof why === 'string' ? t(`shell.next.${why}`) : reasonWords(why).message}</p>
      <button
        type="button"
        onClick={() => {
          desk.step.value = to;
        }}
      >
        {t('panels.next', { step: t(`shell.steps.${to}`) })}
      </button>
    </div>
  );
}

/** A group of inputs with its own heading. */
export function Group(props: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <fieldset class="group stack">
      <legend>
        <h3>{props.title}</h3>
      </legend>
      {props.children}
    </fieldset>
  );
}

/** A group that is folded away until it is wanted, or `opened` at first; what a person folds stays so. */
export function Fold(props: {
  readonly title: string;
  readonly opened?: boolean;
  readonly children: ComponentChildren;
}) {
  const [open] = useState(props.opened ?? false);
  return (
    <details class="group" open={open}>
      <summary>{props.title}</summary>
      <div class="stack">{props.children}</div>
    </details>
  );
}

/** Takes a drawing tool up or puts it down. */
export function ToolButton(props: {
  readonly mode: Parameters<ReturnType<typeof useDesk>['toggleMode']>[0];
  readonly children: ComponentChildren;
}) {
  const desk = useDesk();
  const held = JSON.stringify(desk.mode.value) === JSON.stringify(props.mode);
  return (
    <button type="button" aria-pressed={held} onClick={() => desk.toggleMode(props.mode)}>
      {props.children}
    </button>
  );
}
