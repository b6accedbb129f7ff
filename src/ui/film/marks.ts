import type { FilmPosition } from './props';
import { type FilmTransform, toViewport } from './view';

/** An uncertainty ellipse at one standard uncertainty. */
export interface Ellipse {
  /** Semi-axes, px. */
  readonly major: number;
  readonly minor: number;
  /** From the image's x to the major axis, towards y (clockwise on screen), radians. */
  readonly angle: number;
}

/** Principal axes of a 2 x 2 covariance given as standard uncertainties and covariance. */
export function ellipseOf(ux: number, uy: number, cov: number): Ellipse {
  const varX = ux * ux;
  const varY = uy * uy;
  const mean = (varX + varY) / 2;
  const spread = Math.hypot((varX - varY) / 2, cov);
  return {
    major: Math.sqrt(mean + spread),
    minor: Math.sqrt(Math.max(mean - spread, 0)),
    angle: Math.atan2(2 * cov, varX - varY) / 2,
  };
}

export interface MarkPaths {
  readonly used: string;
  readonly refused: string;
  readonly manual: string;
}

/** Half the size of a mark, CSS px. */
const MARK_RADIUS = 3;
/** Nearer than this along the path, marks would run together, CSS px. */
const LEAST_SPACING = 8;

export interface MarkPlace {
  readonly left: number;
  readonly top: number;
  readonly used: boolean;
  readonly manual: boolean;
}

/**
 * Leaves out used centres that stand closer than marks can be told apart. Refused and hand-placed ones all
 * stay: they are what a person looks for.
 */
export function thinned<T extends MarkPlace>(places: Iterable<T>): T[] {
  let last: T | null = null;
  const kept: T[] = [];
  for (const place of places) {
    if (place.used && !place.manual) {
      const near = last !== null && distance(last, place) < LEAST_SPACING;
      if (near) continue;
      last = place;
    }
    kept.push(place);
  }
  return kept;
}

const distance = (a: MarkPlace, b: MarkPlace) => Math.hypot(a.left - b.left, a.top - b.top);

const circle = (x: number, y: number, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
const cross = (x: number, y: number, r: number) =>
  `M${x - r} ${y - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}`;
const square = (x: number, y: number, r: number) =>
  `M${x - r} ${y - r}h${2 * r}v${2 * r}h${-2 * r}z`;

/** One path a kind of mark (circle used, cross refused, square placed by hand), in CSS pixels of the viewport. */
export function markPaths(places: Iterable<MarkPlace>, radius = MARK_RADIUS): MarkPaths {
  let used = '';
  let refused = '';
  let manual = '';
  for (const place of places) {
    const x = Math.round(place.left * 100) / 100;
    const y = Math.round(place.top * 100) / 100;
    if (!place.used) refused += cross(x, y, radius);
    else if (place.manual) manual += square(x, y, radius);
    else used += circle(x, y, radius);
  }
  return { used, refused, manual };
}

/** A lozenge around where a person said the ball is; larger in the frame shown. */
export function seedMark([left, top]: readonly [number, number], current: boolean): string {
  const r = current ? 10 : 5;
  return `M${left} ${top - r}l${r} ${r}l${-r} ${r}l${-r} ${-r}z`;
}

/** Places of the measured centres in the viewport; those that were not found are left out. */
export function* placesOf(positions: readonly FilmPosition[], view: FilmTransform) {
  for (const { frame, x, y, used, manual } of positions) {
    if (x === null || y === null) continue;
    const [left, top] = toViewport(view, [x, y]);
    yield { frame, left, top, used, manual };
  }
}

/** The frame whose centre lies nearest a place of the viewport, within `reach` CSS px; null: none does. */
export function frameNear(
  positions: readonly FilmPosition[],
  view: FilmTransform,
  left: number,
  top: number,
  reach: number,
): number | null {
  let nearest: number | null = null;
  let shortest = reach;
  for (const place of placesOf(positions, view)) {
    const away = Math.hypot(place.left - left, place.top - top);
    if (away > shortest) continue;
    shortest = away;
    nearest = place.frame;
  }
  return nearest;
}
