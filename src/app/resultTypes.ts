/** The words of a result and a shot, for the components that show them. */

export type { Reduction } from '../reduction/types';
export type {
  BudgetEntry,
  ComparedModel,
  FitCheck,
  Position,
  Result,
  Warning,
} from '../shot/result';
export type { FitChoice, Seal, Shot } from '../shot/schema';
