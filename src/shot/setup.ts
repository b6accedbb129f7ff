import type { Shot } from './schema';

/**
 * What shots filmed from one camera position have in common: the setup they name and what was marked on the picture
 * for it. Where a person marks scale or muzzle anew, the shot stands on a position of its own. Null: names no setup.
 */
export function setupKey({
  setupId,
  scale,
  muzzle,
}: Pick<Shot, 'setupId' | 'scale' | 'muzzle'>): string | null {
  if (setupId === null) return null;
  const marks = [
    scale.lengths.map(({ from, to }) => [from, to]),
    scale.plane?.corners ?? null,
    muzzle?.point ?? null,
  ];
  return JSON.stringify([setupId, marks]);
}
