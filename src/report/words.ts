import { numberAt } from '../core/format';
import type { BudgetEntry } from '../shot/result';

/** The models of motion in words. */
const MODEL_WORDS: Readonly<Record<string, string>> = {
  auto: 'chosen by the fit',
  uniform: 'uniform speed',
  constantAcceleration: 'constant acceleration',
  quadraticDrag: 'drag as the square of the speed',
  quadraticDragPrior: 'drag with a known sphere',
  boreAndFlight: 'bore and flight together',
  averaged: 'average over models',
};

/** What an input is drawn from, in words. */
export const DISTRIBUTION_WORDS: Readonly<Record<BudgetEntry['distribution'], string>> = {
  normal: 'normal',
  student: 'Student t',
  rectangular: 'rectangular',
  triangular: 'triangular',
  discrete: 'discrete',
};

/** A model's name as a result states it, its additions kept: 'constant acceleration, drag bounded'. */
export function modelWords(model: string): string {
  const [motion = model, ...additions] = model.split(', ');
  return [MODEL_WORDS[motion] ?? motion, ...additions].join(', ');
}

/** How well a model is supported beside the best one: 'best', '4 times less supported', 'ruled out'. */
export function supportWords(evidenceRatio: number | null): string {
  if (evidenceRatio === null) return 'ruled out';
  if (evidenceRatio <= 1) return 'best';
  return `${numberAt(evidenceRatio, evidenceRatio < 10 ? 2 : 3)} times less supported`;
}
