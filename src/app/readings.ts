import { computed, type ReadonlySignal } from '@preact/signals';
import { buildClock, type Clock } from '../clock/clock';
import type { FootageInfo } from '../core/film';
import type { Outcome } from '../core/reason';
import type { ImagePoint } from '../core/units';
import { determineScale, type ScaleReport } from '../geometry/scale';
import { buildView } from '../geometry/view';
import { type ShotDraft, statedScale } from './draft';
import type { OpenFilm } from './filmStore';
import { type FlatGrid, flatGrid } from './flatGrid';

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
    /** Null until a known length or the plane has a value. */
    scale: computed<Outcome<ScaleReport> | null>(() => {
      const inputs = scaleInputs.value;
      const open = film.value;
      if (inputs === null || open === null) return null;
      const scale = statedScale(inputs);
      if (scale.lengths.length === 0 && scale.plane === null) return null;
      return determineScale(scale, open.info, muzzlePoint.value ?? middleOf(open.info));
    }),
    /** Lines of the flight plane as the film shows them; null where there is nothing to lay them by. */
    grid: computed<FlatGrid | null>(() => {
      const inputs = scaleInputs.value;
      const open = film.value;
      if (inputs === null || open === null) return null;
      const scale = statedScale(inputs);
      const view = buildView(scale, open.info, muzzlePoint.value ?? middleOf(open.info));
      return view.ok ? flatGrid(view.value, open.info) : null;
    }),
  };
}

/** Stands for the muzzle until it is marked. */
const middleOf = ({ width, height }: FootageInfo): ImagePoint => [
  (width - 1) / 2,
  (height - 1) / 2,
];
