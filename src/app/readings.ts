import { computed, type ReadonlySignal } from '@preact/signals';
import { buildClock, type Clock } from '../clock/clock';
import type { Outcome } from '../core/reason';
import { determineScale, type ScaleReport } from '../geometry/scale';
import { type ShotDraft, statedLengths } from './draft';
import type { OpenFilm } from './filmStore';

/** What the inputs say as they stand: the clock and the scale, each worked out by the measuring core. */
export function createReadings(
  draft: ReadonlySignal<ShotDraft | null>,
  film: ReadonlySignal<OpenFilm | null>,
) {
  // Only their own inputs may wake them: a rejected frame must not rebuild the clock.
  const timing = computed(() => draft.value?.timing ?? null);
  const scaleInputs = computed(() => draft.value?.scale ?? null);
  return {
    clock: computed<Outcome<Clock> | null>(() => {
      const open = film.value;
      const inputs = timing.value;
      if (open === null || inputs === null) return null;
      return buildClock(inputs, open.info, open.timestamps);
    }),
    /** Null until a known length has a value. */
    scale: computed<Outcome<ScaleReport> | null>(() => {
      const now = draft.value;
      if (scaleInputs.value === null || now === null) return null;
      const lengths = statedLengths(now);
      return lengths.length === 0 ? null : determineScale({ ...scaleInputs.value, lengths });
    }),
  };
}
