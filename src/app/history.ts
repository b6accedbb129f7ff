/** Undo history over immutable values: every edit keeps what stood before it. Pure. */
export interface History<T, Label = string> {
  readonly present: T;
  readonly past: readonly Step<T, Label>[];
  /** Undone steps, the next to redo first. */
  readonly future: readonly Step<T, Label>[];
}

interface Step<T, Label> {
  /** The value on the other side of the step. */
  readonly value: T;
  readonly label: Label;
  /** Edits with the same key that follow at once are one step (nudging a handle). */
  readonly mergeKey: string | null;
  /** ms */
  readonly at: number;
}

export interface Edit<Label = string> {
  /** What was done: 'recording rate'. */
  readonly label: Label;
  readonly mergeKey?: string;
}

const LONGEST_HISTORY = 500;
const MERGE_WITHIN_MS = 1500;

export const startHistory = <T, Label = string>(present: T): History<T, Label> => ({
  ...{ present, past: [], future: [] },
});

/** The history with `next` as its present; unchanged where `next` is the present. */
export function record<T, Label>(
  history: History<T, Label>,
  next: T,
  edit: Edit<Label>,
  at: number,
): History<T, Label> {
  if (Object.is(next, history.present)) return history;
  const mergeKey = edit.mergeKey ?? null;
  const last = history.past.at(-1);
  const merges =
    last !== undefined &&
    mergeKey !== null &&
    last.mergeKey === mergeKey &&
    at - last.at < MERGE_WITHIN_MS &&
    history.future.length === 0;
  const step = { value: history.present, label: edit.label, mergeKey, at };
  const past = merges
    ? [...history.past.slice(0, -1), { ...last, at }]
    : [...history.past.slice(-LONGEST_HISTORY + 1), step];
  return { present: next, past, future: [] };
}

/** The same history of other values: `change` is what becomes of each. */
export function mapHistory<T, Label>(
  history: History<T, Label>,
  change: (value: T) => T,
): History<T, Label> {
  const changed = (steps: readonly Step<T, Label>[]) =>
    steps.map((step) => ({ ...step, value: change(step.value) }));
  return {
    present: change(history.present),
    past: changed(history.past),
    future: changed(history.future),
  };
}

export function undo<T, Label>(history: History<T, Label>): History<T, Label> {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    present: step.value,
    past: history.past.slice(0, -1),
    future: [{ ...step, value: history.present, mergeKey: null }, ...history.future],
  };
}

export function redo<T, Label>(history: History<T, Label>): History<T, Label> {
  const [step, ...future] = history.future;
  if (step === undefined) return history;
  return {
    present: step.value,
    past: [...history.past, { ...step, value: history.present }],
    future,
  };
}
