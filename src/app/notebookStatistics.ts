import { effect, type ReadonlySignal } from '@preact/signals';
import type { Reason } from '../core/reason';
import type { SeriesApi } from '../protocol/series';
import type { ThreadFault } from '../protocol/threadFault';
import type { GroupSummary } from '../series/groups';
import type { NotebookEntry } from '../shot/notebook';
import type { StartThread } from './crew';
import type { EntryGroup, GroupMark } from './notebookTable';
import { createTask } from './task';

export interface GroupStatistics extends GroupSummary {
  readonly mark: GroupMark;
}

/** A pause in ticking shots before the statistics follow, ms. */
const SUMMARISE_AFTER_MS = 150;

/** What the shots of each group say together, followed while the notebook is on the screen. */
export function createNotebookStatistics(
  {
    groups,
    shown,
  }: {
    readonly groups: ReadonlySignal<readonly EntryGroup[]>;
    readonly shown: ReadonlySignal<boolean>;
  },
  coverage: number,
  start: StartThread<SeriesApi>,
  stopped: (fault: ThreadFault) => Reason,
) {
  const task = createTask<readonly GroupStatistics[], SeriesApi>(start, stopped);
  const stop = effect(() => {
    const now = groups.value;
    if (!shown.value) return;
    const timer = setTimeout(() => {
      if (now.length === 0) return task.reset();
      void task.run(async (thread) => {
        const parts = now.map((group) => group.entries.map(countedPart));
        const summaries = await thread.summarise(parts, coverage);
        return now.flatMap(({ mark }, i) => {
          const summary = summaries[i];
          return summary === undefined ? [] : [{ ...summary, mark }];
        });
      });
    }, SUMMARISE_AFTER_MS);
    return () => clearTimeout(timer);
  });
  return {
    state: task.state,
    cancel: task.cancel,
    dispose() {
      stop();
      task.reset();
    },
  };
}

const countedPart = ({ name, exitVelocity, own, shared }: NotebookEntry) => ({
  ...{ name, exitVelocity, own, shared },
});
