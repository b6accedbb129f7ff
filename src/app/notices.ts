import { signal } from '@preact/signals';
import { type Reason, reasonOf } from '../core/reason';
import type { StepName } from './draft';

/** Something a person is told where it arose. */
export interface Notice {
  readonly id: number;
  readonly place: StepName;
  readonly tone: 'problem' | 'information';
  readonly reason: Reason;
  readonly actions: readonly NoticeAction[];
}

export interface NoticeAction {
  /** What it does; the page has words for it, under which an edit it makes can be undone. */
  readonly does: 'takeOverInputs' | 'inputsIntoNewShot' | 'readAsGrey';
  run(words: string): void;
}

export function createNotices() {
  const list = signal<readonly Notice[]>([]);
  let nextId = 1;

  const add = (
    place: StepName,
    tone: Notice['tone'],
    reason: Reason,
    actions: readonly NoticeAction[],
  ) => {
    // The same thing said again replaces what was said.
    const others = list.value.filter(
      (one) => one.place !== place || one.reason.code !== reason.code,
    );
    list.value = [...others, { id: nextId++, place, tone, reason, actions }];
  };
  return {
    list,
    /** Shows what was thrown. A cancelled piece of work is no problem. */
    report(place: StepName, error: unknown, actions: readonly NoticeAction[] = []) {
      const reason = reasonOf(error);
      if (reason.code !== 'cancelled') add(place, 'problem', reason, actions);
    },
    problem: (place: StepName, reason: Reason, actions: readonly NoticeAction[] = []) =>
      add(place, 'problem', reason, actions),
    inform: (place: StepName, reason: Reason, actions: readonly NoticeAction[] = []) =>
      add(place, 'information', reason, actions),
    dismiss(id: number) {
      list.value = list.value.filter((one) => one.id !== id);
    },
    /** Problems of an earlier try are over once there is another. */
    clearProblems(place: StepName) {
      list.value = list.value.filter((one) => one.place !== place || one.tone !== 'problem');
    },
  };
}
