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
  const muzzlePoint = computed(() => draft.value?.muzzle?.point ?? null);
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
      const open = film.value;
      const lengths = statedLengths(now);
      if (open === null || lengths.length === 0) return null;
      const { width, height } = open.info;
      const muzzle = muzzlePoint.value ?? [(width - 1) / 2, (height - 1) / 2];
      return determineScale({ ...scaleInputs.value, lengths }, open.info, muzzle);
    }),
  };
}
