import { computed, signal } from '@preact/signals';
import type { ShotDraft } from './draft';
import { type Edit, type History, record, redo, startHistory, undo } from './history';

/** The shot being written, with its undo history. Null while no footage is open. */
export function createShotStore(now: () => number) {
  const history = signal<History<ShotDraft> | null>(null);
  /** The draft last written to a file or read from one. */
  const saved = signal<ShotDraft | null>(null);
  const draft = computed(() => history.value?.present ?? null);
  const move = (by: (h: History<ShotDraft>) => History<ShotDraft>) => {
    if (history.value !== null) history.value = by(history.value);
  };
  return {
    draft,
    unsaved: computed(() => draft.value !== null && draft.value !== saved.value),
    /** The draft before the last edit, and what that was; null: nothing was edited. */
    lastEdit: computed(() => {
      const step = history.value?.past.at(-1);
      return step === undefined ? null : { before: step.value, label: step.label };
    }),
    undoLabel: computed(() => history.value?.past.at(-1)?.label ?? null),
    redoLabel: computed(() => history.value?.future[0]?.label ?? null),
    /** Undone edits count: what was kept of them is to be replaced. */
    edited: computed(() => {
      const { past = [], future = [] } = history.value ?? {};
      return past.length + future.length > 0;
    }),
    /** Starts on another shot; its history begins anew. */
    start(draft: ShotDraft | null, isSaved: boolean) {
      history.value = draft === null ? null : startHistory(draft);
      saved.value = isSaved ? draft : null;
    },
    edit(change: (draft: ShotDraft) => ShotDraft, edit: Edit) {
      move((h) => record(h, change(h.present), edit, now()));
    },
    /** Fills in what the program itself found (the footage's hash); no step to undo. */
    amend(change: (draft: ShotDraft) => ShotDraft) {
      const before = draft.value;
      move((h) => ({ ...h, present: change(h.present) }));
      if (saved.value === before) saved.value = draft.value;
    },
    undo: () => move(undo),
    redo: () => move(redo),
    markSaved() {
      saved.value = draft.value;
    },
  };
}
