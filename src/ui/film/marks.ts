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

/** CSS pixels. */
const RADIUS = 3.5;

const circle = (x: number, y: number) =>
  `M${x - RADIUS} ${y}a${RADIUS} ${RADIUS} 0 1 0 ${2 * RADIUS} 0a${RADIUS} ${RADIUS} 0 1 0 ${-2 * RADIUS} 0`;
const cross = (x: number, y: number) =>
  `M${x - RADIUS} ${y - RADIUS}l${2 * RADIUS} ${2 * RADIUS}m0 ${-2 * RADIUS}l${-2 * RADIUS} ${2 * RADIUS}`;
const square = (x: number, y: number) =>
  `M${x - RADIUS} ${y - RADIUS}h${2 * RADIUS}v${2 * RADIUS}h${-2 * RADIUS}z`;

/** One path a kind of mark (circle used, cross refused, square placed by hand), in CSS pixels of the viewport. */
export function markPaths(
  places: Iterable<{
    readonly left: number;
    readonly top: number;
    readonly used: boolean;
    readonly manual: boolean;
  }>,
): MarkPaths {
  let used = '';
  let refused = '';
  let manual = '';
  for (const place of places) {
    const x = Math.round(place.left * 100) / 100;
    const y = Math.round(place.top * 100) / 100;
    if (!place.used) refused += cross(x, y);
    else if (place.manual) manual += square(x, y);
    else used += circle(x, y);
  }
  return { used, refused, manual };
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
  let distance = reach;
  for (const place of placesOf(positions, view)) {
    const away = Math.hypot(place.left - left, place.top - top);
    if (away > distance) continue;
    distance = away;
    nearest = place.frame;
  }
  return nearest;
}
