import { describe, expect, it } from 'vitest';
import { fitAxis, flightLine, provisionalAxis } from '../../../src/geometry/flightLine';
import { determineScale } from '../../../src/geometry/scale';
import type { KnownLength, Scale } from '../../../src/shot/schema';
import { normalStream } from '../noise';

const bar = (change: Partial<KnownLength> = {}): KnownLength => ({
  from: [100, 200],
  to: [700, 200],
  length: 0.2,
  u: 5e-5,
  endpointU: 0.3,
  depthOffset: 0,
  depthOffsetU: 0.002,
  ...change,
});
const FRAME = { width: 1024, height: 256, pixelAspect: 1 };
const MUZZLE = [120, 128] as const;
const PLANE: NonNullable<Scale['plane']> = {
  corners: [
    [100, 40],
    [900, 40],
    [900, 240],
    [100, 240],
  ],
  width: 0.4,
  height: 0.1,
  u: 5e-5,
  cornerU: 0.3,
  depthOffset: 0,
  depthOffsetU: 0.002,
};
const mirrored = ([a, b, c, d]: typeof PLANE.corners): typeof PLANE.corners => [b, a, d, c];
const FOLDED: NonNullable<Scale['lens']> = {
  k1: { value: -0.1, u: 0.01 },
  k2: { value: 0, u: 0 },
  centre: [511.5, 127.5],
  centreU: 2,
  focal: { value: 1000, u: 10 },
  correlation: 0,
};
const scaleOf = (change: Partial<Scale>) => {
  const scale = determineScale(
    {
      lengths: [bar()],
      cameraDistance: { value: 1.2, u: 0.02 },
      plane: null,
      lens: null,
      ...change,
    },
    FRAME,
    MUZZLE,
  );
  if (!scale.ok) throw new Error(scale.reason.message);
  return scale.value;
};

describe('determineScale', () => {
  it('divides length by pixels and lists what its uncertainty is made of', () => {
    const scale = scaleOf({});
    expect(scale.value).toBeCloseTo(0.2 / 600, 12);
    expect(scale.sources.map(({ source, u }) => [source, u])).toEqual([
      ['known length', expect.closeTo(5e-5 / 0.2, 12)],
      ['ends of the known length', expect.closeTo((Math.SQRT2 * 0.3) / 600, 12)],
      ['depth of the known length', expect.closeTo(0.002 / 1.2, 12)],
    ]);
    expect(scale.u / scale.value).toBeCloseTo(Math.hypot(2.5e-4, 7.0711e-4, 1.66667e-3), 8);
  });

  it('corrects a bar behind the flight line by similar triangles', () => {
    // Pinhole: a bar 60 mm behind a flight line at 1.2 m looks 1.2 / 1.26 as large.
    const scale = scaleOf({ lengths: [bar({ depthOffset: 0.06 })] });
    expect(scale.value).toBeCloseTo(((0.2 / 600) * 1.2) / 1.26, 12);
    expect(scale.sources.map((s) => s.source)).toContain('camera distance');
  });

  it('averages several lengths and widens where they disagree', () => {
    const agreeing = scaleOf({ lengths: [bar(), bar({ from: [100, 210], to: [700, 210] })] });
    expect(agreeing.u).toBeCloseTo(scaleOf({}).u / Math.SQRT2, 9);
    const apart = scaleOf({ lengths: [bar(), bar({ to: [730, 200] })] });
    expect(apart.warnings.map((w) => w.code)).toContain('lengthsDisagree');
    expect(apart.u).toBeGreaterThan(5 * agreeing.u);
  });

  it('counts the camera distance that several lengths share once, with its sign', () => {
    const seen = (depthOffset: number) =>
      bar({ depthOffset, to: [100 + (600 * 1.2) / (1.2 + depthOffset), 200] });
    const shareOf = (offsets: readonly number[]) =>
      scaleOf({ lengths: offsets.map(seen) }).sources.find(
        ({ source }) => source === 'camera distance',
      )?.u;
    // By similar triangles the factor is d / (d + o), its relative derivative by d is o / (d (d + o)).
    expect(shareOf([0.06])).toBeCloseTo((0.06 * 0.02) / (1.2 * 1.26), 12);
    expect(shareOf([0.06, 0.06])).toBeCloseTo((0.06 * 0.02) / (1.2 * 1.26), 12);
    // One behind and one in front: nearly all of it cancels.
    expect(shareOf([0.06, -0.06])).toBeLessThan(1e-4);
  });

  it('warns when parallax cannot be judged', () => {
    expect(scaleOf({ cameraDistance: null }).warnings.map((w) => w.code)).toContain(
      'parallaxUnknown',
    );
  });

  it.each([
    [{ lengths: [bar({ to: [100, 200] })] }, 'zeroLength'],
    [{ lengths: [bar(), bar({ u: 0.3 })] }, 'lengthTooUncertain'],
    [{ lengths: [bar({ endpointU: 1e300 })] }, 'lengthTooUncertain'],
    [{ plane: { ...PLANE, corners: mirrored(PLANE.corners) } }, 'planeCorners'],
    [{ lens: { ...FOLDED, k1: { value: -3, u: 0 } } }, 'outsideLens'],
  ] as const)('refuses %#', (change, code) => {
    const scale = determineScale(
      {
        lengths: [bar()],
        cameraDistance: null,
        plane: null,
        lens: null,
        ...change,
      },
      FRAME,
      MUZZLE,
    );
    expect(scale.ok ? 'given' : scale.reason.code).toBe(code);
  });
});

describe('flightLine', () => {
  it('measures along and across, y down', () => {
    const line = flightLine([100, 50], [0, -2]);
    expect(line.along(100, 30)).toBeCloseTo(20, 12);
    expect(line.across(110, 30)).toBeCloseTo(10, 12);
    expect(line.pointAt(5)).toEqual([100, 45]);
    expect(line.alongU(1, 4, 0)).toBeCloseTo(2, 12);
  });
});

describe('provisionalAxis', () => {
  it.each([
    [
      [100, 60],
      [1, 0],
    ],
    [
      [900, 60],
      [-1, 0],
    ],
  ] as const)('points from %j to the farther edge', (muzzle, axis) => {
    expect(provisionalAxis(muzzle, 1024, 128)).toEqual(axis);
  });
});

describe('fitAxis', () => {
  it('finds a tilted path in either sense, with an uncertainty that fits the scatter', () => {
    let chi = 0;
    const runs = 200;
    for (let seed = 0; seed < runs; seed++) {
      const noise = normalStream(seed);
      const angle = Math.PI + 0.02;
      const points = Array.from({ length: 12 }, (_, i) => ({
        x: 500 + 40 * i * Math.cos(angle) + 0.1 * noise(),
        y: 100 + 40 * i * Math.sin(angle) + 0.1 * noise(),
        variance: 0.01,
      }));
      const fit = fitAxis(points);
      if (!fit.ok) throw new Error(fit.reason.message);
      const error = Math.atan2(fit.value.axis[1], fit.value.axis[0]) - (0.02 - Math.PI);
      chi += (error / fit.value.angleU) ** 2;
    }
    expect(chi / runs).toBeGreaterThan(0.6);
    expect(chi / runs).toBeLessThan(1.3);
  });

  it('gives none for points in one place', () => {
    const fit = fitAxis([
      { x: 1, y: 1, variance: 1 },
      { x: 1, y: 1, variance: 1 },
    ]);
    expect(fit.ok).toBe(false);
  });
});
