import type { Quantity } from './estimate';
import { coverageFactor } from './statistics';

/** A reported quantity with the Student interval of its standard uncertainty (JCGM 100:2008, G.6.4). */
export function quantity(value: number, u: number, dof: number | null, coverage: number): Quantity {
  const half = coverageFactor(coverage, dof) * u;
  return { value, u, interval: [value - half, value + half], coverage, dof };
}
