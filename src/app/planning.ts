import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Estimate, Quantity } from '../core/estimate';
import type { FootageInfo } from '../core/film';
import { orThrow } from '../core/reason';
import { launcherOf } from '../launch/fromShot';
import type { Judgement } from '../plan/judge';
import type { Sweep } from '../plan/sweep';
import type { PlanApi } from '../protocol/plan';
import { stoppedBy, type ThreadFault } from '../protocol/threadFault';
import type { CameraTrade, Plan, PlanningInputs } from '../shot/planning';
import type { StartThread } from './crew';
import { newLauncher, type ShotDraft } from './draft';
import { FIRST_PLAN, FIRST_TRADE } from './firstPlan';
import { type Edit, type History, record, startHistory } from './history';
import { planFrom } from './planFromShot';
import { createTask } from './task';
import { undoing } from './undoing';

/** A pause in typing before the plan is worked out anew, ms. */
const JUDGE_AFTER_MS = 200;
/** Grid of the sweep. */
const RATES = 13;
const FIELDS = 11;
/** Rates and fields of view reach this far about the plan's, as factors. */
const RATE_REACH = 5;
const FIELD_REACH = 3;
/** Significant figures of what is tried. */
const FIGURES = 3;
/** Of the ball's diameter: no narrower field of view is tried, past the muzzle. */
const NARROWEST = 2;

const FIRST: PlanningInputs = {
  ...{ plan: FIRST_PLAN, trade: FIRST_TRADE, model: 'gasDynamics' },
  launcher: newLauncher({ value: 0.031, u: 5e-5 }, { value: 1.4, u: 1e-3 }),
};

/** A shot being planned: what it should give is worked out as it is typed, other settings on request. */
export function createPlanning(
  start: StartThread<PlanApi>,
  draft: ReadonlySignal<ShotDraft | null>,
  info: ReadonlySignal<FootageInfo | null>,
) {
  const history = signal(startHistory(FIRST));
  const part = <Key extends keyof PlanningInputs>(key: Key) =>
    computed(() => history.value.present[key]);
  const [plan, trade, launcher, model] = [
    part('plan'),
    part('trade'),
    part('launcher'),
    part('model'),
  ];
  /** Whether the plan is on the screen, so that it is worth working out. */
  const shown = signal(false);
  const judging = createTask<Judgement, PlanApi>(start, stopped);
  const sweeping = createTask<Sweep, PlanApi>(start, stopped);
  const speed = createTask<Quantity, PlanApi>(start, stopped);
  /** The latest answer and the plan it is of; it stays while the next is worked out. */
  const judged = signal<{ readonly plan: Plan; readonly told: Judgement } | null>(null);
  /** What the sweep was asked for. */
  const swept = signal<{ readonly plan: Plan; readonly trade: CameraTrade } | null>(null);

  const stopJudging = effect(() => {
    const now = plan.value;
    if (!shown.value) return;
    const timer = setTimeout(() => {
      void judging.run(async (thread) => {
        const told = await thread.judge(now);
        judged.value = { plan: now, told };
        return told;
      });
    }, JUDGE_AFTER_MS);
    return () => clearTimeout(timer);
  });
  const edit = (next: Partial<PlanningInputs>, how: Edit) => {
    history.value = record(history.value, { ...history.value.present, ...next }, how, Date.now());
  };
  const change = (next: Partial<Plan>, how: Edit) =>
    edit({ plan: { ...plan.value, ...next } }, how);

  return {
    ...{ history, plan, trade, launcher, model, shown, edit, change },
    ...undoing(history),
    judgement: computed(() => judged.value?.told ?? null),
    judging: judging.state,
    sweeping: sweeping.state,
    cancelSweep: sweeping.cancel,
    speed: speed.state,
    cancelSpeed: speed.cancel,
    /** The plan shown has not been worked out yet. */
    isStale: computed(() => judged.value !== null && judged.value.plan !== plan.value),
    isSweepStale: computed(
      () =>
        swept.value !== null &&
        (swept.value.plan !== plan.value || swept.value.trade !== trade.value),
    ),
    /** Takes up what the window was left with. */
    resume(left: History<PlanningInputs>) {
      history.value = left;
    },
    /** Whether a shot is open that a plan could be made from. */
    hasShot: computed(() => draft.value !== null && info.value !== null),
    /** Takes ball, air, clock, scale and launcher over from the shot that is open. */
    takeOver(how: Edit) {
      if (draft.value === null || info.value === null) return;
      const next = { plan: planFrom(draft.value, info.value, plan.value) };
      const stated = draft.value.launcher;
      edit(stated === null ? next : { ...next, launcher: stated }, how);
    },
    /** Takes the expected speed from the model chosen. */
    async askModel(how: Edit): Promise<void> {
      const { ball, air, coverage } = plan.value;
      const stated = launcherOf({ launcher: launcher.value, ball, air });
      if (!stated.ok) return speed.refuse(stated.reason);
      await speed.run(async (thread, onShare) => {
        const told = await thread.speed({ ...stated.value, model: model.value, coverage }, onShare);
        const value = orThrow(told);
        change({ speed: rounded(value) }, how);
        return value;
      });
    },
    async sweep(): Promise<void> {
      const question = { plan: plan.value, trade: trade.value };
      swept.value = question;
      await sweeping.run((thread, onShare) =>
        thread.sweep(
          {
            ...question,
            rates: spaced(question.plan.camera.rate.value, RATE_REACH, RATES),
            fields: fieldsAbout(question.plan),
          },
          onShare,
        ),
      );
    },
    dispose() {
      stopJudging();
      judging.reset();
      sweeping.reset();
      speed.reset();
    },
  };
}

/** A model's speed as a person would type it. */
const rounded = ({ value, u }: Estimate): Estimate => ({
  value: Number(value.toPrecision(4)),
  u: Number(u.toPrecision(2)),
});

/** Evenly spaced on a logarithmic scale, `reach` times less and more than the middle. */
const spaced = (middle: number, reach: number, count: number): number[] =>
  between(middle / reach, middle * reach, count);

const between = (low: number, high: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) =>
    Number((low * (high / low) ** (i / (count - 1))).toPrecision(FIGURES)),
  );

function fieldsAbout({ view, ball }: Plan): number[] {
  const narrowest = view.beforeMuzzle + NARROWEST * ball.diameter.value;
  const low = Math.max(narrowest, view.across / FIELD_REACH);
  return between(low, Math.max(low * FIELD_REACH, view.across * FIELD_REACH), FIELDS);
}

const stopped = (fault: ThreadFault) =>
  stoppedBy(
    'planningStopped',
    'The thread that works out the plan stopped.',
    fault,
    'Change a setting or ask again.',
  );
