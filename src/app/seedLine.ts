import type { ImagePoint, ImageVector } from '../core/units';
import { flightLine } from '../geometry/flightLine';
import type { Shot } from './resultTypes';

type Seeds = Shot['edits']['seeds'];

interface Line {
  readonly origin: ImagePoint;
  readonly axis: ImageVector;
}

/** A place in the streak image: frame, and px along the axis from the line's origin. */
interface LinePlace {
  readonly frame: number;
  readonly along: number;
}

interface Slant {
  readonly from: LinePlace;
  readonly to: LinePlace;
}

/** The slanted line through the first and last place the ball was said to be at; null: fewer than two. */
export function slantOf(line: Line, seeds: Seeds): Slant | null {
  const [first, last] = [seeds[0], seeds.at(-1)];
  if (first === undefined || last === undefined || first.frame === last.frame) return null;
  const { along } = flightLine(line.origin, line.axis);
  return {
    from: { frame: first.frame, along: along(first.x, first.y) },
    to: { frame: last.frame, along: along(last.x, last.y) },
  };
}

/**
 * Where a slanted line drawn on the streak image says the ball is: at its ends, in whole frames. Places stated
 * before keep their distance from the line; it replaces all of them.
 */
export function seedsOfSlant(line: Line, slant: Slant, before: Seeds, frameCount: number): Seeds {
  const flight = flightLine(line.origin, line.axis);
  const [ax, ay] = flight.axis;
  const wholeFrame = (frame: number) =>
    Math.min(Math.max(Math.round(frame), 0), Math.max(0, frameCount - 1));
  const [early, late] =
    slant.from.frame <= slant.to.frame ? [slant.from, slant.to] : [slant.to, slant.from];
  const slope =
    late.frame > early.frame ? (late.along - early.along) / (late.frame - early.frame) : 0;
  return [
    { place: early, kept: before[0] },
    { place: late, kept: before.at(-1) },
  ].flatMap(({ place, kept }, i) => {
    const frame = wholeFrame(place.frame);
    if (i === 1 && frame === wholeFrame(early.frame)) return [];
    const [x, y] = flight.pointAt(place.along + slope * (frame - place.frame));
    const across = kept === undefined ? 0 : flight.across(kept.x, kept.y);
    return [{ frame, x: x - across * ay, y: y + across * ax }];
  });
}
