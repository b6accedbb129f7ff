/** The words of a result and a shot, for the components that show them. */

export type { Reduction } from '../reduction/types';
export type {
  BudgetEntry,
  Position,
  Result,
} from '../shot/result';
export type { FitChoice, Seal, Shot } from '../shot/schema';
