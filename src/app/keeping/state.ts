import { signal } from '@preact/signals';
import type { Reason } from '../../core/reason';
import type { KeptFootage } from './footage';

/** How well the work is kept, for the screen. */
export const createKeepingState = () => ({
  /** What is not kept, and what to do; null: all is. */
  problem: signal<Reason | null>(null),
  /** How the footage comes back after a reload; null: none is open. */
  footage: signal<KeptFootage['kind'] | 'copying' | null>(null),
});
