import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type {
  ComparisonPart,
  ComparisonQuestion,
  ModelOutlook,
  ModelPrediction,
} from '../compare/compareModels';
import { isAvailable, type Reported } from '../core/estimate';
import { type Outcome, success } from '../core/reason';
import { launcherOf } from '../launch/fromShot';
import type { LaunchApi } from '../protocol/launch';
import { stoppedBy, type ThreadFault } from '../protocol/threadFault';
import type { Reduction } from '../reduction/types';
import type { ModelName } from '../shot/planning';
import type { StartThread } from './crew';
import type { ShotDraft } from './draft';
import { createTask } from './task';

/** In the order they are shown. */
export const MODEL_ORDER = [
  'constantForce',
  'momentum',
  'gasDynamics',
  'expansion',
] as const satisfies readonly ModelName[];

/** What one model has said so far. */
export interface ModelView {
  readonly prediction: Outcome<ModelPrediction> | null;
  readonly outlook: ModelOutlook | null;
}

export type ModelViews = Readonly<Record<ModelName, ModelView>>;

const SILENT: ModelView = { prediction: null, outlook: null };
const NOTHING: ModelViews = {
  constantForce: SILENT,
  momentum: SILENT,
  gasDynamics: SILENT,
  expansion: SILENT,
};

/** Launch models run on the shot's launcher in a thread of their own, what they say shown as it comes. */
export function createModelComparison(
  start: StartThread<LaunchApi>,
  draft: ReadonlySignal<ShotDraft | null>,
  measuring: { readonly reduction: ReadonlySignal<Reduction | null> },
) {
  const task = createTask<null, LaunchApi>(start, modelsStopped);
  const views = signal<ModelViews>(NOTHING);
  /** The question that the views answer, and its text. */
  const asked = signal<{ readonly question: ComparisonQuestion; readonly key: string } | null>(
    null,
  );
  const question = computed((): Outcome<ComparisonQuestion> | null => {
    const shot = draft.value;
    if (shot === null) return null;
    const stated = launcherOf(shot);
    if (!stated.ok) return stated;
    const result = measuring.reduction.value?.result;
    const measured = { speed: known(result?.exitVelocity), lead: known(result?.lead) };
    return success({ ...stated.value, coverage: shot.coverage, measured });
  });
  const take = (part: ComparisonPart) => {
    const before = views.value[part.model];
    const now =
      part.kind === 'prediction'
        ? { ...before, prediction: part.told }
        : { ...before, outlook: part.told };
    views.value = { ...views.value, [part.model]: now };
  };
  const forget = () => {
    task.reset();
    views.value = NOTHING;
    asked.value = null;
  };
  return {
    state: task.state,
    views,
    /** What would be asked now; null: no shot is open. */
    question,
    /** What the views answer; null: nothing was asked. */
    asked: computed(() => asked.value?.question ?? null),
    /** Launcher or film have changed since the models were asked. */
    isStale: computed(() => {
      const now = question.value;
      return (
        asked.value !== null && (now === null || !now.ok || keyOf(now.value) !== asked.value.key)
      );
    }),
    async run(): Promise<void> {
      const now = question.value;
      if (now === null) return;
      forget();
      if (!now.ok) return task.refuse(now.reason);
      const key = keyOf(now.value);
      asked.value = { question: now.value, key };
      await task.run(async (thread, onShare) => {
        // What a thread given up still says is of no concern.
        await thread.compare(now.value, (part) => asked.value?.key === key && take(part), onShare);
        return null;
      });
    },
    cancel: task.cancel,
    /** For another film. */
    reset: forget,
  };
}

const keyOf = (question: ComparisonQuestion): string => JSON.stringify(question);

const known = (reported: Reported | undefined) =>
  reported !== undefined && isAvailable(reported) ? reported : null;

const modelsStopped = (fault: ThreadFault) =>
  stoppedBy(
    'modelsStopped',
    'The thread that ran the launch models stopped.',
    fault,
    'Predict again.',
  );
