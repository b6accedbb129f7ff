import type { Quantity } from '../core/estimate';
import { quantity } from '../core/quantity';

/** a - b with their correlation counted. */
export function difference(
  a: Quantity,
  b: Quantity,
  correlation: number,
  coverage: number,
): Quantity {
  const u = Math.sqrt(Math.max(0, a.u ** 2 + b.u ** 2 - 2 * correlation * a.u * b.u));
  return quantity(a.value - b.value, u, effectiveDof(u, [a, b].map(toPart)), coverage);
}

const toPart = ({ u, dof }: Quantity) => ({ contribution: u, dof });

/** Effective degrees of freedom by Welch and Satterthwaite (JCGM 100:2008, G.4.1, eq. G.2b); null: unlimited. */
export function effectiveDof(
  u: number,
  parts: readonly { readonly contribution: number; readonly dof: number | null }[],
): number | null {
  let sum = 0;
  for (const { contribution, dof } of parts) if (dof !== null) sum += contribution ** 4 / dof;
  return sum > 0 ? u ** 4 / sum : null;
}

/** Standard uncertainty of a quantity known only to lie within `half` of its value (JCGM 100:2008, 4.3.7). */
export const uniformU = (half: number): number => half / Math.sqrt(3);
/** The same where values near the middle are likelier (JCGM 100:2008, 4.3.9). */
export const triangularU = (half: number): number => half / Math.sqrt(6);
