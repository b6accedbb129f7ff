import { computed, type Signal } from '@preact/signals';
import { type History, redo, undo } from './history';

/** Going back and forth in a history that a signal holds; null: there is none yet. */
export function undoing<T, Label>(
  history: Signal<History<T, Label>> | Signal<History<T, Label> | null>,
) {
  const move = (by: (h: History<T, Label>) => History<T, Label>) => {
    if (history.value !== null) history.value = by(history.value);
  };
  return {
    /** What the next undo takes back; null: nothing. */
    undoLabel: computed(() => history.value?.past.at(-1)?.label ?? null),
    redoLabel: computed(() => history.value?.future[0]?.label ?? null),
    undo: () => move(undo),
    redo: () => move(redo),
  };
}
