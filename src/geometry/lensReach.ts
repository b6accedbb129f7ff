import type { Estimate } from '../core/estimate';
import { undistort } from '../core/lens';
import { type Outcome, success } from '../core/reason';
import type { ImagePoint } from '../core/units';
import type { Scale } from '../shot/schema';
import { type FrameShape, lensOf } from './view';

type StatedLens = NonNullable<Scale['lens']>;

/** Step of the differences, in standard uncertainties. */
const STEP = 0.1;

/**
 * How far the correction of a lens moves the corner of the picture that it moves farthest, px; positive: outwards,
 * the lens showed it too near the middle. Failure `outsideLens`.
 */
export function cornerReach(lens: StatedLens, frame: FrameShape): Outcome<Estimate> {
  const { width, height, pixelAspect } = frame;
  const corners: ImagePoint[] = [
    [0, 0],
    [(width - 1) * pixelAspect, 0],
    [(width - 1) * pixelAspect, height - 1],
    [0, height - 1],
  ];
  const reach = (stated: StatedLens): Outcome<number> => {
    const radial = lensOf(stated, pixelAspect);
    const away = ([x, y]: ImagePoint) => Math.hypot(x - radial.centre[0], y - radial.centre[1]);
    let farthest = 0;
    for (const corner of corners) {
      const straight = undistort(radial, corner);
      if (!straight.ok) return straight;
      const moved = away(straight.value) - away(corner);
      if (Math.abs(moved) > Math.abs(farthest)) farthest = moved;
    }
    return success(farthest);
  };
  const value = reach(lens);
  if (!value.ok) return value;
  const { k1, k2, correlation } = lens;
  const change = (by: Partial<StatedLens>): number => {
    const there = reach({ ...lens, ...by });
    return there.ok ? (there.value - value.value) / STEP : 0;
  };
  const byK1 = change({ k1: { ...k1, value: k1.value + STEP * k1.u } });
  const byK2 = change({ k2: { ...k2, value: k2.value + STEP * k2.u } });
  const variance = byK1 ** 2 + byK2 ** 2 + 2 * correlation * byK1 * byK2;
  return success({ value: value.value, u: Math.sqrt(Math.max(0, variance)) });
}
