import type { ImagePoint, ImageVector } from '../../core/units';
import { unitVector } from '../../core/vector';
import { t } from '../../text/text';
import { type Edit, insideImage, regionBetween } from './editing';
import {
  type Corner,
  type FilmMode,
  type FilmOverlays,
  type FilmRegion,
  PLANE_CORNERS,
} from './props';
import type { Size } from './view';

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

/** A point by its shares of the image's width and height. */
const inside = ({ width, height }: Size, across: number, down: number): ImagePoint => [
  across * width - 0.5,
  down * height - 0.5,
];

/**
 * What can be taken hold of in a mode. What is not marked yet waits about the middle of the frame: a keyboard has no
 * other way to put it there. `reach`: distance of the arrow's tip from the muzzle point, px.
 */
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
    case 'length': {
      const length = overlays.lengths[mode.index];
      if (length === undefined) return [];
      return endHandles('length', mode.index, [length.from, length.to], image);
    }
    case 'edge': {
      const edge = overlays.edges[mode.index] ?? [
        inside(image, 0.25, 0.5),
        inside(image, 0.75, 0.5),
      ];
      return endHandles('edge', mode.index, edge, image);
    }
    case 'plane':
      return planeHandles(overlays, image);
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

function endHandles(
  kind: 'length' | 'edge',
  index: number,
  [from, to]: readonly [ImagePoint, ImagePoint],
  image: Size,
): EditHandle[] {
  const along = unit(to[0] - from[0], to[1] - from[1]);
  const shared = {
    look: 'cross',
    // A length's ends matter along it, an edge's across.
    direction: kind === 'length' ? along : ([-along[1], along[0]] as const),
    steps: SUB_PIXEL,
  } as const;
  return [
    {
      ...shared,
      id: `${kind}From${index}`,
      label: t(`film.handle.${kind}From`, { number: index + 1 }),
      at: from,
      moved: (place) => ({ kind, index, from: insideImage(place, image), to }),
    },
    {
      ...shared,
      id: `${kind}To${index}`,
      label: t(`film.handle.${kind}To`, { number: index + 1 }),
      at: to,
      moved: (place) => ({ kind, index, from, to: insideImage(place, image) }),
    },
  ];
}

/** In their fixed order: the first is the top left as seen, and on clockwise. */
function planeHandles({ plane }: FilmOverlays, image: Size): EditHandle[] {
  if (plane === null) return [];
  return plane.corners.map((at, corner) => ({
    id: `plane${corner}`,
    label: t('film.handle.plane', {
      number: corner + 1,
      corner: t(`film.corner.${PLANE_CORNERS[corner] as Corner}`),
    }),
    look: 'cross',
    at,
    direction: RIGHTWARDS,
    steps: SUB_PIXEL,
    moved: (to) => ({ kind: 'plane', corner, at: insideImage(to, image) }),
  }));
}

function muzzleHandles(overlays: FilmOverlays, image: Size, reach: number): EditHandle[] {
  const { point, axis, axisFitted } = overlays.muzzle ?? {
    ...{ point: inside(image, 0.5, 0.5), axis: null, axisFitted: true },
  };
  const direction = axis ?? RIGHTWARDS;
  const stated = axisFitted ? null : axis;
  const place: EditHandle = {
    id: 'muzzlePoint',
    label: t('film.handle.muzzlePoint'),
    look: 'cross',
    at: point,
    direction,
    steps: SUB_PIXEL,
    moved: (to) => ({ kind: 'muzzle', point: insideImage(to, image), axis: stated }),
  };
  if (overlays.muzzle === null) return [place];
  return [
    place,
    {
      id: 'muzzleAxis',
      label: t('film.handle.muzzleAxis'),
      look: 'tip',
      at: [point[0] + reach * direction[0], point[1] + reach * direction[1]],
      direction,
      steps: SUB_PIXEL,
      moved: (to) => ({ kind: 'muzzle', point, axis: unit(to[0] - point[0], to[1] - point[1]) }),
    },
  ];
}

function pointHandles(overlays: FilmOverlays, frame: number, image: Size): EditHandle[] {
  const { x = null, y = null } =
    overlays.positions.find((candidate) => candidate.frame === frame) ?? {};
  const at: ImagePoint = x === null || y === null ? inside(image, 0.5, 0.5) : [x, y];
  return [
    {
      id: `point${frame}`,
      label: t('film.handle.point', { frame }),
      look: 'cross',
      at,
      direction: overlays.muzzle?.axis ?? RIGHTWARDS,
      steps: SUB_PIXEL,
      moved: (to) => ({ kind: 'point', frame, at: insideImage(to, image) }),
    },
  ];
}

function seedHandles(overlays: FilmOverlays, frame: number, image: Size): EditHandle[] {
  const seed = overlays.seeds.find((candidate) => candidate.frame === frame);
  return [
    {
      id: `seed${frame}`,
      label: t('film.handle.seed', { frame }),
      look: 'cross',
      at: seed?.at ?? inside(image, 0.5, 0.5),
      direction: overlays.muzzle?.axis ?? RIGHTWARDS,
      steps: WHOLE_PIXEL,
      moved: (to) => ({ kind: 'seed', frame, at: insideImage(to, image) }),
    },
  ];
}

function regionHandles(which: FilmRegion, overlays: FilmOverlays, image: Size): EditHandle[] {
  const region = which === 'flight' ? overlays.flightRegion : overlays.sealRegion;
  const [x, y, width, height] =
    region ?? regionBetween(inside(image, 0.25, 0.25), inside(image, 0.75, 0.75), image);
  const left = x - 0.5;
  const top = y - 0.5;
  const right = left + width;
  const bottom = top + height;
  const corner = (id: Corner, at: ImagePoint, opposite: ImagePoint): EditHandle => ({
    id,
    label: t(`film.handle.${which}Corner`, { corner: t(`film.corner.${id}`) }),
    look: 'corner',
    at,
    direction: RIGHTWARDS,
    steps: WHOLE_PIXEL,
    moved: (to) => ({ kind: 'region', which, region: regionBetween(to, opposite, image) }),
  });
  return [
    corner('topLeft', [left, top], [right, bottom]),
    corner('topRight', [right, top], [left, bottom]),
    corner('bottomRight', [right, bottom], [left, top]),
    corner('bottomLeft', [left, bottom], [right, top]),
  ];
}
