import type { FitChoice } from '../../../src/shot/schema';
import type { ShotKind } from './positionsShot';

/** A kind of shot, and how it is to be reduced. */
export interface PositionsKind extends ShotKind {
  readonly name: string;
  readonly model: FitChoice;
  /** Whether its figures have to keep the limits; else they are for information. */
  readonly judged: boolean;
}

const ORDINARY = {
  motion: 'drag',
  shape: 'any',
  coefficient: 'any',
  loss: null,
  reach: null,
  into: 'air',
  grossErrors: 0,
  model: 'auto',
  judged: true,
} as const;

export const KINDS: readonly PositionsKind[] = [
  { ...ORDINARY, name: 'drag, zone in a straight line', shape: 'straight' },
  { ...ORDINARY, name: 'drag, zone with a tail', shape: 'exponential' },
  { ...ORDINARY, name: 'constant deceleration', motion: 'constant' },
  { ...ORDINARY, name: 'uniform, into a chamber', motion: 'uniform', into: 'chamber' },
  {
    ...ORDINARY,
    name: 'drag from ball and air',
    coefficient: 'fromBallAndAir',
    model: 'quadraticDragPrior',
  },
  { ...ORDINARY, name: 'drag left free', model: 'quadraticDrag' },
  { ...ORDINARY, name: 'one centre in twenty grossly wrong', grossErrors: 0.05 },
  // One truth over and over, not one drawn from what is stated.
  { ...ORDINARY, name: 'no loss at the muzzle', loss: 0, judged: false },
  {
    ...ORDINARY,
    name: 'great loss, long tail',
    shape: 'exponential',
    loss: 1.35,
    reach: 3,
    judged: false,
  },
];
