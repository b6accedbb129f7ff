import type { ReadonlySignal } from '@preact/signals';
import { isAvailable } from '../core/estimate';
import type { Reason } from '../core/reason';
import { launcherOf, type StatedLauncher } from '../launch/fromShot';
import type { CurvePoint, CurveQuestion } from '../launch/speedCurve';
import type { LaunchApi } from '../protocol/launch';
import type { ThreadFault } from '../protocol/threadFault';
import type { NotebookEntry } from '../shot/notebook';
import type { ModelName } from '../shot/planning';
import type { StartThread } from './crew';
import { createTask } from './task';

export type PlotAxis = CurveQuestion['what'];

export interface ModelCurve {
  readonly model: ModelName;
  readonly what: PlotAxis;
  /** Whose launcher it is worked out for. */
  readonly shot: string;
  readonly points: readonly CurvePoint[];
}

/** Points of a model curve. */
const CURVE_POINTS = 7;
/** A curve reaches past the shots by this share of their span, or of their value where they have none. */
const REACH = 0.1;
const REACH_ALONE = 0.3;

/** What a model says over the range of the shots that count, in a thread of its own. */
export function createNotebookCurve(
  counted: ReadonlySignal<readonly NotebookEntry[]>,
  start: StartThread<LaunchApi>,
  stopped: (fault: ThreadFault) => Reason,
) {
  const task = createTask<ModelCurve, LaunchApi>(start, stopped);
  return {
    state: task.state,
    cancel: task.cancel,
    reset: task.reset,
    /** For the first of the shots whose launcher is known. */
    async draw(model: ModelName, what: PlotAxis, coverage: number): Promise<void> {
      const known = firstLauncher(counted.value);
      const places = counted.value.flatMap(({ conditions, exitVelocity }) => {
        const place = conditions[what];
        return place !== null && isAvailable(exitVelocity) ? [place.value] : [];
      });
      if (known === null || places.length === 0) return task.refuse(NO_LAUNCHER);
      const { shot, stated } = known;
      const question = { ...stated, model, what, values: spread(places), coverage };
      await task.run(async (thread, onShare) => {
        return { model, what, shot, points: await thread.curve(question, onShare) };
      });
    },
  };
}

const NO_LAUNCHER: Reason = {
  code: 'noSeriesLauncher',
  message: 'No shot that counts states its whole launcher, so no model can be drawn beside them.',
  remedy:
    'State bore, barrel length, residual pressure and seal burst pressure of one of them on its Models step.',
};

function firstLauncher(
  entries: readonly NotebookEntry[],
): { readonly shot: string; readonly stated: StatedLauncher } | null {
  for (const { name, shot } of entries) {
    const stated = shot === null ? null : launcherOf(shot);
    if (stated?.ok) return { shot: name, stated: stated.value };
  }
  return null;
}

/** Evenly over the places and a little beyond. */
function spread(places: readonly number[]): number[] {
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const beyond = high > low ? REACH * (high - low) : REACH_ALONE * high;
  const from = Math.max(0, low - beyond);
  const step = (high + beyond - from) / (CURVE_POINTS - 1);
  return Array.from({ length: CURVE_POINTS }, (_, i) => from + i * step);
}
