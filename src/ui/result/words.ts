import { numberAt } from '../../core/format';
import { unitOf } from '../../core/unitTable';
import type { ShownUnit } from '../../plots/units';

/** The models of motion in words. */
export const MODEL_WORDS: Readonly<Record<string, string>> = {
  auto: 'chosen by the fit',
  uniform: 'uniform speed',
  constantAcceleration: 'constant acceleration',
  quadraticDrag: 'drag as the square of the speed',
  quadraticDragPrior: 'drag with a known sphere',
  boreAndFlight: 'bore and flight together',
  averaged: 'average over models',
};

/** A model's name as a result states it, its additions kept: 'constant acceleration, drag bounded'. */
export function modelWords(model: string): string {
  const [motion = model, ...additions] = model.split(', ');
  return [MODEL_WORDS[motion] ?? motion, ...additions].join(', ');
}

export const percent = (share: number): string => `${numberAt(share * 100, 4)}\u00a0%`;

/** A speed unit a person chose, for plots and budgets. */
export const speedShown = (symbol: string): ShownUnit => ({
  symbol,
  perSi: 1 / unitOf('speed', symbol).factor,
});
