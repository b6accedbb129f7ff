import type { ImagePoint, ImageRect, ImageVector } from '../../core/units';
import { unitVector } from '../../core/vector';
import type { FilmMode, FilmOverlays, FilmRegion } from './props';
import type { Size } from './view';

/** A change of one overlay's geometry. */
export type Edit =
  | {
      readonly kind: 'length';
      readonly index: number;
      readonly from: ImagePoint;
      readonly to: ImagePoint;
    }
  | { readonly kind: 'muzzle'; readonly point: ImagePoint; readonly axis: ImageVector | null }
  | { readonly kind: 'point'; readonly frame: number; readonly at: ImagePoint }
  | { readonly kind: 'seed'; readonly frame: number; readonly at: ImagePoint }
  | { readonly kind: 'region'; readonly which: FilmRegion; readonly region: ImageRect };

/** Something to take hold of: where it is, and what taking it elsewhere means. */
export interface EditHandle {
  readonly id: string;
  readonly label: string;
  readonly look: 'cross' | 'tip' | 'corner';
  readonly at: ImagePoint;
  /** Unit direction along which its exact place matters; the magnifier's profile runs along it. */
  readonly direction: ImageVector;
  /** Keyboard steps, px. */
  readonly steps: NudgeSteps;
  moved(to: ImagePoint): Edit;
}

export interface NudgeSteps {
  readonly fine: number;
  readonly normal: number;
  readonly coarse: number;
}

const SUB_PIXEL: NudgeSteps = { fine: 0.01, normal: 0.1, coarse: 1 };
const WHOLE_PIXEL: NudgeSteps = { fine: 1, normal: 1, coarse: 10 };
const RIGHTWARDS: ImageVector = [1, 0];

const unit = (dx: number, dy: number): ImageVector =>
  dx === 0 && dy === 0 ? RIGHTWARDS : unitVector([dx, dy]);

/** The nearest point inside the image, whose pixels reach half a pixel around their centres. */
const insideImage = ([x, y]: ImagePoint, image: Size): ImagePoint => [
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

/** What can be taken hold of in a mode. `reach`: distance of the arrow's tip from the muzzle point, px. */
export function handlesOf(
  mode: FilmMode,
  overlays: FilmOverlays,
  currentFrame: number,
  image: Size,
  reach: number,
): readonly EditHandle[] {
  switch (mode.kind) {
    case 'inspect':
      return [];
    case 'length':
      return lengthHandles(mode.index, overlays, image);
    case 'muzzle':
      return muzzleHandles(overlays, image, reach);
    case 'point':
      return pointHandles(overlays, currentFrame, image);
    case 'seed':
      return seedHandles(overlays, currentFrame, image);
    case 'region':
      return regionHandles(mode.which, overlays, image);
  }
}

function lengthHandles(index: number, overlays: FilmOverlays, image: Size): EditHandle[] {
  const length = overlays.lengths[index];
  if (length === undefined) return [];
  const { from, to } = length;
  const shared = {
    look: 'cross',
    direction: unit(to[0] - from[0], to[1] - from[1]),
    steps: SUB_PIXEL,
  } as const;
  return [
    {
      ...shared,
      id: `from${index}`,
      label: `Known length ${index + 1}, first end`,
      at: from,
      moved: (place) => ({ kind: 'length', index, from: insideImage(place, image), to }),
    },
    {
      ...shared,
      id: `to${index}`,
      label: `Known length ${index + 1}, second end`,
      at: to,
      moved: (place) => ({ kind: 'length', index, from, to: insideImage(place, image) }),
    },
  ];
}

function muzzleHandles(overlays: FilmOverlays, image: Size, reach: number): EditHandle[] {
  if (overlays.muzzle === null) return [];
  const { point, axis, axisFitted } = overlays.muzzle;
  const direction = axis ?? RIGHTWARDS;
  const stated = axisFitted ? null : axis;
  return [
    {
      id: 'muzzlePoint',
      label: 'Point on the muzzle plane',
      look: 'cross',
      at: point,
      direction,
      steps: SUB_PIXEL,
      moved: (to) => ({ kind: 'muzzle', point: insideImage(to, image), axis: stated }),
    },
    {
      id: 'muzzleAxis',
      label: 'Direction of travel',
      look: 'tip',
      at: [point[0] + reach * direction[0], point[1] + reach * direction[1]],
      direction,
      steps: SUB_PIXEL,
      moved: (to) => ({ kind: 'muzzle', point, axis: unit(to[0] - point[0], to[1] - point[1]) }),
    },
  ];
}

function pointHandles(overlays: FilmOverlays, frame: number, image: Size): EditHandle[] {
  const position = overlays.positions.find((candidate) => candidate.frame === frame);
  if (position === undefined || position.x === null || position.y === null) return [];
  return [
    {
      id: `point${frame}`,
      label: `Ball centre in frame ${frame}`,
      look: 'cross',
      at: [position.x, position.y],
      direction: overlays.muzzle?.axis ?? RIGHTWARDS,
      steps: SUB_PIXEL,
      moved: (to) => ({ kind: 'point', frame, at: insideImage(to, image) }),
    },
  ];
}

function seedHandles(overlays: FilmOverlays, frame: number, image: Size): EditHandle[] {
  const seed = overlays.seeds.find((candidate) => candidate.frame === frame);
  if (seed === undefined) return [];
  return [
    {
      id: `seed${frame}`,
      label: `Where the ball is in frame ${frame}`,
      look: 'cross',
      at: seed.at,
      direction: overlays.muzzle?.axis ?? RIGHTWARDS,
      steps: WHOLE_PIXEL,
      moved: (to) => ({ kind: 'seed', frame, at: insideImage(to, image) }),
    },
  ];
}

function regionHandles(which: FilmRegion, overlays: FilmOverlays, image: Size): EditHandle[] {
  const region = which === 'flight' ? overlays.flightRegion : overlays.sealRegion;
  if (region === null) return [];
  const [x, y, width, height] = region;
  const left = x - 0.5;
  const top = y - 0.5;
  const right = left + width;
  const bottom = top + height;
  const name = which === 'flight' ? 'Flight region' : 'Seal region';
  const corner = (id: string, label: string, at: ImagePoint, opposite: ImagePoint): EditHandle => ({
    id,
    label: `${name}, ${label} corner`,
    look: 'corner',
    at,
    direction: RIGHTWARDS,
    steps: WHOLE_PIXEL,
    moved: (to) => ({ kind: 'region', which, region: regionBetween(to, opposite, image) }),
  });
  return [
    corner('topLeft', 'top left', [left, top], [right, bottom]),
    corner('topRight', 'top right', [right, top], [left, bottom]),
    corner('bottomRight', 'bottom right', [right, bottom], [left, top]),
    corner('bottomLeft', 'bottom left', [left, bottom], [right, top]),
  ];
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
      return { kind: 'length', index: mode.index, from, to };
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
