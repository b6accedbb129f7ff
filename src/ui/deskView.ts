import { batch } from '@preact/signals';
import { STEPS } from '../app/draft';
import { type Desk, PLACES } from './desk';
import type { Contrast } from './film/picture';
import type { FilmTransform } from './film/view';

/** How the desk looks, to be kept while the window is away. Plain data. */
export const viewOf = (desk: Desk) => ({
  place: desk.place.value,
  step: desk.step.value,
  film: desk.view.value,
  greys: desk.look.greys.value,
  gridShown: desk.gridShown.value,
  cautionsOpen: desk.cautionsOpen.value,
  introOpen: desk.introOpen.value,
});

/** Lays the desk out as it was kept; what is not known any more is left as it is. */
export function showView(desk: Desk, kept: unknown): void {
  if (typeof kept !== 'object' || kept === null) return;
  const view = kept as Partial<Record<keyof ReturnType<typeof viewOf>, unknown>>;
  batch(() => {
    desk.place.value = PLACES.find((place) => place === view.place) ?? desk.place.value;
    desk.step.value = STEPS.find((step) => step === view.step) ?? desk.step.value;
    if (isTransform(view.film)) desk.view.value = view.film;
    if (isWindow(view.greys)) desk.look.greys.value = view.greys;
    desk.gridShown.value = view.gridShown === true;
    desk.cautionsOpen.value = view.cautionsOpen !== false;
    desk.introOpen.value = view.introOpen !== false;
  });
}

function isWindow(data: unknown): data is Contrast {
  if (typeof data !== 'object' || data === null) return false;
  const { low, high } = data as Partial<Record<keyof Contrast, unknown>>;
  return typeof low === 'number' && typeof high === 'number' && low < high;
}

function isTransform(data: unknown): data is FilmTransform {
  if (typeof data !== 'object' || data === null) return false;
  const { scale, x0, y0, fitted } = data as Partial<Record<keyof FilmTransform, unknown>>;
  return [scale, x0, y0].every(Number.isFinite) && typeof fitted === 'boolean';
}
