import { batch, computed, signal } from '@preact/signals';
import { type ShotDraft, withHash } from './draft';
import { type Edit, type History, mapHistory, record, startHistory } from './history';
import { undoing } from './undoing';

/** A shot with what was done to it, and which of its states is in a file. */
export interface ShotWork {
  readonly history: History<ShotDraft>;
  /** The draft last written to a file or read from one. */
  readonly saved: ShotDraft | null;
}

/** Work that begins with a draft. */
export const workOn = (draft: ShotDraft, isSaved: boolean): ShotWork => ({
  history: startHistory(draft),
  saved: isSaved ? draft : null,
});

/** The shot being written, with its undo history. Null while no footage is open. */
export function createShotStore(now: () => number) {
  const history = signal<History<ShotDraft> | null>(null);
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
    ...undoing(history),
    /** Undone edits count: what was kept of them is to be replaced. */
    edited: computed(() => {
      const { past = [], future = [] } = history.value ?? {};
      return past.length + future.length > 0;
    }),
    /** Everything there is to keep of it; null while no footage is open. */
    work: computed<ShotWork | null>(() =>
      history.value === null ? null : { history: history.value, saved: saved.value },
    ),
    /** Starts on another shot. */
    start(work: ShotWork) {
      batch(() => {
        history.value = work.history;
        saved.value = work.saved;
      });
    },
    edit(change: (draft: ShotDraft) => ShotDraft, edit: Edit) {
      move((h) => record(h, change(h.present), edit, now()));
    },
    /** Fills in the footage's hash, as if it had been known from the start. */
    recordHash(sha256: string) {
      if (draft.value?.footage.sha256 === sha256) return;
      const known = new Map<ShotDraft, ShotDraft>();
      const hashed = (before: ShotDraft) => {
        const after = known.get(before) ?? withHash(before, sha256);
        known.set(before, after);
        return after;
      };
      batch(() => {
        move((h) => mapHistory(h, hashed));
        saved.value = saved.value && hashed(saved.value);
      });
    },
    markSaved() {
      saved.value = draft.value;
    },
  };
}
