import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { SeriesFit } from '../compare/fitSeries';
import type { FittedShot, FreeKey, SeriesFitQuestion } from '../compare/seriesCurve';
import { isAvailable } from '../core/estimate';
import { orThrow, type Reason } from '../core/reason';
import { launcherOf } from '../launch/fromShot';
import type { LaunchApi } from '../protocol/launch';
import type { ThreadFault } from '../protocol/threadFault';
import type { NotebookEntry } from '../shot/notebook';
import type { ModelName } from '../shot/planning';
import type { StartThread } from './crew';
import { createTask } from './task';

/** Inputs that may be set free, in the order they are shown. */
export const FREE_INPUTS = [
  'gapDischarge',
  'residualPressure',
  'sealBurstPressure',
] as const satisfies readonly FreeKey[];

/** A fit with the shots and the model it is of. */
export interface FoundFit {
  readonly fit: SeriesFit;
  readonly model: ModelName;
  readonly shots: number;
  /** Counted shots that state no whole launcher or no speed. */
  readonly leftOut: number;
  /** What was asked, as text. */
  readonly key: string;
}

/** Inputs of the launcher fitted to the shots that count, in a thread of their own. */
export function createNotebookFit(
  counted: ReadonlySignal<readonly NotebookEntry[]>,
  start: StartThread<LaunchApi>,
  stopped: (fault: ThreadFault) => Reason,
) {
  const task = createTask<FoundFit, LaunchApi>(start, stopped);
  const free = signal<readonly FreeKey[]>(['gapDischarge']);
  const withLeads = signal(true);
  /** What would be asked now, the model apart. */
  const asked = () => ({
    shots: counted.value.flatMap((entry) => fittedShot(entry, withLeads.value)),
    free: free.value,
  });
  return {
    ...{ free, withLeads },
    state: task.state,
    /** The shots that count, or what is set free, changed after the fit. */
    isStale: computed(() => {
      const work = task.state.value;
      return work.kind === 'done' && work.found.key !== keyOf(asked());
    }),
    cancel: task.cancel,
    reset: task.reset,
    setFree(key: FreeKey, isFree: boolean) {
      const others = free.value.filter((one) => one !== key);
      free.value = FREE_INPUTS.filter((one) => (one === key ? isFree : others.includes(one)));
    },
    run: (model: ModelName, coverage: number): Promise<void> => {
      const question = asked();
      const entries = counted.value.length;
      return task.run(async (thread, onShare) => {
        const fit = orThrow(await thread.fit({ ...question, model, coverage }, onShare));
        const shots = question.shots.length;
        return { fit, model, shots, leftOut: entries - shots, key: keyOf(question) };
      });
    },
  };
}

/** The order in which shots are listed changes nothing. */
const keyOf = ({ shots, free }: Pick<SeriesFitQuestion, 'shots' | 'free'>): string =>
  JSON.stringify([shots.map((one) => JSON.stringify(one)).sort(), free]);

/** None where the shot states no whole launcher, or has no speed with an uncertainty. */
export function fittedShot(
  { name, shot, exitVelocity, lead, own, shared }: NotebookEntry,
  withLeads: boolean,
): FittedShot[] {
  const stated = shot === null ? null : launcherOf(shot);
  if (!stated?.ok || !isAvailable(exitVelocity)) return [];
  const { u } = own ?? exitVelocity;
  if (!(u > 0)) return [];
  const used = withLeads && isAvailable(lead) && lead.u > 0;
  return [
    {
      ...stated.value,
      ...{ name, shared },
      speed: { value: exitVelocity.value, u },
      lead: used ? { value: lead.value, u: lead.u } : null,
    },
  ];
}
