import { withCorner } from '../../app/edits';
import type { ImagePoint, ImageRect, ImageVector } from '../../core/units';
import type { FilmMode, FilmOverlays, FilmRegion } from './props';
import type { Size } from './view';

/** A change of one overlay's geometry. */
export type Edit =
  | {
      /** Two ends: of a known length, or of an edge that is straight in the scene. */
      readonly kind: 'length' | 'edge';
      readonly index: number;
      readonly from: ImagePoint;
      readonly to: ImagePoint;
    }
  | { readonly kind: 'muzzle'; readonly point: ImagePoint; readonly axis: ImageVector | null }
  | { readonly kind: 'point'; readonly frame: number; readonly at: ImagePoint }
  | { readonly kind: 'seed'; readonly frame: number; readonly at: ImagePoint }
  | { readonly kind: 'plane'; readonly corner: number; readonly at: ImagePoint }
  | { readonly kind: 'region'; readonly which: FilmRegion; readonly region: ImageRect };

/** The nearest point inside the image, whose pixels reach half a pixel around their centres. */
export const insideImage = ([x, y]: ImagePoint, image: Size): ImagePoint => [
  Math.min(Math.max(x, -0.5), image.width - 0.5),
  Math.min(Math.max(y, -0.5), image.height - 0.5),
];

/** The whole-pixel region whose outer edges run nearest two opposite corners. */
export function regionBetween(a: ImagePoint, b: ImagePoint, image: Size): ImageRect {
  const span = (p: number, q: number, size: number): readonly [number, number] => {
    const low = Math.min(Math.max(Math.round(Math.min(p, q) + 0.5), 0), size - 1);
    const high = Math.min(Math.max(Math.round(Math.max(p, q) + 0.5), low + 1), size);
    return [low, high - low];
  };
  const [x, width] = span(a[0], b[0], image.width);
  const [y, height] = span(a[1], b[1], image.height);
  return [x, y, width, height];
}

/** What a press at `start`, now at `end`, away from any handle means in a mode; null: nothing. */
export function drawn(
  mode: FilmMode,
  overlays: FilmOverlays,
  currentFrame: number,
  start: ImagePoint,
  end: ImagePoint,
  image: Size,
): Edit | null {
  const from = insideImage(start, image);
  const to = insideImage(end, image);
  switch (mode.kind) {
    case 'inspect':
      return null;
    case 'length':
    case 'edge':
      return { kind: mode.kind, index: mode.index, from, to };
    case 'plane': {
      const corner = nearest(overlays.plane?.corners ?? [], start);
      return corner < 0 ? null : { kind: 'plane', corner, at: to };
    }
    case 'muzzle': {
      const { muzzle } = overlays;
      const axis = muzzle === null || muzzle.axisFitted ? null : muzzle.axis;
      return { kind: 'muzzle', point: to, axis };
    }
    case 'point':
      return { kind: 'point', frame: currentFrame, at: to };
    case 'seed':
      return { kind: 'seed', frame: currentFrame, at: to };
    case 'region':
      return { kind: 'region', which: mode.which, region: regionBetween(from, to, image) };
  }
}

/** The overlays as they will be once the edit is taken over. */
export function withEdit(overlays: FilmOverlays, edit: Edit): FilmOverlays {
  switch (edit.kind) {
    case 'edge': {
      const edges = [...overlays.edges];
      edges[edit.index] = [edit.from, edit.to];
      return { ...overlays, edges };
    }
    case 'plane': {
      const { plane } = overlays;
      if (plane === null) return overlays;
      return { ...overlays, plane: { corners: withCorner(plane.corners, edit.corner, edit.at) } };
    }
    case 'length': {
      const lengths = [...overlays.lengths];
      const label = lengths[edit.index]?.label ?? '';
      lengths[edit.index] = { from: edit.from, to: edit.to, label };
      return { ...overlays, lengths };
    }
    case 'muzzle': {
      const { muzzle } = overlays;
      const axisFitted = edit.axis === null && (muzzle?.axisFitted ?? false);
      const axis = edit.axis ?? (axisFitted ? (muzzle?.axis ?? null) : null);
      return { ...overlays, muzzle: { point: edit.point, axis, axisFitted } };
    }
    case 'point': {
      const others = overlays.positions.filter((position) => position.frame !== edit.frame);
      const [x, y] = edit.at;
      const moved = { frame: edit.frame, x, y, ux: null, uy: null, cov: null };
      return { ...overlays, positions: [...others, { ...moved, used: true, manual: true }] };
    }
    case 'seed': {
      const others = overlays.seeds.filter((seed) => seed.frame !== edit.frame);
      return { ...overlays, seeds: [...others, { frame: edit.frame, at: edit.at }] };
    }
    case 'region':
      return edit.which === 'flight'
        ? { ...overlays, flightRegion: edit.region }
        : { ...overlays, sealRegion: edit.region };
  }
}

/** Index of the point nearest to a place; -1: there is none. */
function nearest(points: readonly ImagePoint[], [x, y]: ImagePoint): number {
  const away = points.map(([px, py]) => Math.hypot(px - x, py - y));
  return away.indexOf(Math.min(...away));
}
