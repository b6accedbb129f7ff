import { triangulate } from '../core/linalg';
import type { Pixels } from '../core/units';

/** A smooth bulge has no detail finer than a polynomial of this order across its width. */
const ORDER = 4;

/**
 * Root mean square departure of an outline, px, from the smooth cap nearest to it (least-squares polynomial of
 * fourth order). `outline` holds one distance from the seal plane a line, in order across the axis.
 */
export function capRoughness(outline: Float64Array): Pixels {
  const count = outline.length;
  const terms = ORDER + 1;
  if (count <= terms) return 0;
  const columns = new Float64Array(count * terms);
  for (let i = 0; i < count; i++) {
    const across = (2 * i) / (count - 1) - 1;
    let power = 1;
    for (let term = 0; term < terms; term++) {
      columns[term * count + i] = power;
      power *= across;
    }
  }
  const residual = outline.slice();
  triangulate(columns, count, terms, residual);
  let sum = 0;
  for (let i = terms; i < count; i++) sum += (residual[i] as number) ** 2;
  return Math.sqrt(sum / (count - terms));
}
