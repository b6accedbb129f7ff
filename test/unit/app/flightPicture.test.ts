import { describe, expect, it } from 'vitest';
import { fittedPath, instantsOf } from '../../../src/app/flightPicture';
import { residualsOf, speedsBetween } from '../../../src/app/plotData';
import { buildClock } from '../../../src/clock/clock';
import { intervalFactor, isAvailable } from '../../../src/core/estimate';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const shot = exampleShot();
const info = { width: 64, height: 32, frameCount: 20, playbackRate: 30 };
const reduce = (rejectedFrames: number[] = []) =>
  exampleReduction({
    shot: { ...shot, edits: { rejectedFrames, manualPoints: [], seeds: [] } },
    footageSha256: null,
  });

describe('the fitted path in the image', () => {
  const clock = buildClock(shot.timing, info, null);
  if (!clock.ok) throw new Error(clock.reason.message);

  it('runs along the axis at the centres’ distance from it, at the frames’ own numbers', () => {
    const reduction = reduce();
    // The muzzle is marked 4 px below the flight line, and one frame is 40 m/s / 12 000 / 0.3333 mm = 10 px.
    const path = fittedPath(reduction, [5, 20], clock.value, info.frameCount);
    expect(path?.[3]?.at[0]).toBeCloseTo(5 + 3 * 10, 1);
    expect(path?.[3]?.at[1]).toBeCloseTo(16, 9);
    expect(path?.[3]?.frame).toBeCloseTo(3, 9);
    // 1e-5 m, twice, at 0.3333 mm a pixel.
    expect(path?.[3]?.halfWidth).toBeCloseTo((2 * 1e-5) / 3.333e-4, 6);
  });
});

describe('what a result states', () => {
  it('has its instants in the order of time, without those it could not find', () => {
    const kinds = instantsOf(reduce().result).map((one) => one.kind);
    expect(kinds).toEqual(['contact', 'burst', 'exit']);
  });

  it('has the factor its interval was made with', () => {
    const { exitVelocity } = reduce().result;
    expect(isAvailable(exitVelocity) && intervalFactor(exitVelocity)).toBeCloseTo(2, 9);
  });

  it('has how far a centre left out lies off the curve, within the reach of the curve', () => {
    const { result, curve } = reduce([0, 4]);
    const positions = result.positions.map((one) =>
      one.frame === 4 ? { ...one, s: (one.s ?? 0) + 3e-3 } : one,
    );
    if (curve === null) throw new Error('the example has a curve');
    // The curve begins between frames 0 and 1, and has no place at frame 4 itself.
    const kept = [1, 3, 5, 9];
    const pick = (values: Float64Array) => Float64Array.from(kept, (i) => values[i] as number);
    const { times, s, sU, v, vU } = curve;
    const shorter = { times: pick(times), s: pick(s), sU: pick(sU), v: pick(v), vU: pick(vU) };
    const points = residualsOf({ ...result, positions }, shorter);
    expect(points.map(({ frame }) => frame)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    const far = points.find(({ frame }) => frame === 4);
    expect(far?.used).toBe(false);
    expect(far?.residual).toBeCloseTo(3e-3, 9);
    // The fit's own residuals stay with their frames.
    expect(points.find(({ frame }) => frame === 5)?.residual).toBe(-1e-5);
  });

  it('gives each residual to the frame it belongs to, rejected frames passed over', () => {
    const points = residualsOf(reduce([1]).result);
    expect(points.map((one) => one.frame)).toEqual([0, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(points[1]?.residual).toBe(-1e-5);
  });

  it('has the speed between neighbours, over a gap too', () => {
    const speeds = speedsBetween(reduce([1]).result.positions);
    expect(speeds).toHaveLength(8);
    for (const { v } of speeds) expect(v).toBeCloseTo(40, 6);
    expect(speeds[0]?.time).toBeCloseTo(1 / 12000, 9);
    expect(speeds[0]?.u).toBeCloseTo((Math.SQRT2 * 2e-5 * 12000) / 2, 9);
  });
});
