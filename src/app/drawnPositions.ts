import type { DrawnPosition } from './measuring';
import type { Shot } from './resultTypes';

/**
 * Positions with a person's edits in them at once, before the result has caught up: a centre that is nudged
 * again and again must not jump back in between.
 */
export function withEdits(
  positions: readonly DrawnPosition[],
  edits: Shot['edits'] | undefined,
): readonly DrawnPosition[] {
  if (edits === undefined) return positions;
  const rejected = new Set(edits.rejectedFrames);
  const byHand = new Map(edits.manualPoints.map((one) => [one.frame, one]));
  const drawn = positions.map((one): DrawnPosition => {
    const placed = byHand.get(one.frame);
    byHand.delete(one.frame);
    const used = one.used && !rejected.has(one.frame);
    if (placed === undefined) return used === one.used ? one : { ...one, used };
    const same = one.manual && one.x === placed.x && one.y === placed.y;
    return same ? { ...one, used } : { ...atHand(placed), used: !rejected.has(one.frame) };
  });
  if (byHand.size === 0) return drawn;
  const added = [...byHand.values()].map((placed) => ({
    ...atHand(placed),
    used: !rejected.has(placed.frame),
  }));
  return [...drawn, ...added].sort((a, b) => a.frame - b.frame);
}

const atHand = ({ frame, x, y, ux, uy }: Shot['edits']['manualPoints'][number]) => ({
  frame,
  x,
  y,
  ux,
  uy,
  cov: 0,
  manual: true,
});
