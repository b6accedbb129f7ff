import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitAxis, flightLine } from '../../../src/geometry/flightLine';
import { checkCorners, homographyOf, inverted, through } from '../../../src/geometry/homography';
import { determineScale } from '../../../src/geometry/scale';
import { buildView } from '../../../src/geometry/view';
import type { KnownLength, Scale } from '../../../src/shot/schema';

const SEED = { seed: 20_310_417 };
type Point = readonly [number, number];
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const angle = between(0, 2 * Math.PI);
const place: fc.Arbitrary<Point> = fc.tuple(between(-2000, 2000), between(-2000, 2000));

/** A turn about the origin, with or without exchanging left and right, enlarged. */
interface Change {
  readonly turn: number;
  readonly mirrored: boolean;
  readonly by: number;
}
const change = fc.record({ turn: angle, mirrored: fc.boolean(), by: between(0.1, 10) });
const changed = ({ turn, mirrored, by }: Change, [x, y]: Point): Point => {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const across = mirrored ? -x : x;
  return [by * (cos * across - sin * y), by * (sin * across + cos * y)];
};

/** A flight: places at equal times along a line, a little beside it. */
const flight = fc.record({
  start: place,
  heading: angle,
  step: between(1, 60),
  beside: fc.array(between(-0.5, 0.5), { minLength: 3, maxLength: 20 }),
});
const pathOf = ({
  start,
  heading,
  step,
  beside,
}: typeof flight extends fc.Arbitrary<infer F> ? F : never) =>
  beside.map((off, i): Point => {
    const [dx, dy] = [Math.cos(heading), Math.sin(heading)];
    return [start[0] + i * step * dx - off * dy, start[1] + i * step * dy + off * dx];
  });

/** Pixels a frame along the path's own axis, by least squares, as the reduction reads it off. */
function pace(path: readonly Point[], muzzle: Point): number {
  const fit = fitAxis(path.map(([x, y]) => ({ x, y, variance: 0.01 })));
  if (!fit.ok) throw new Error(fit.reason.message);
  const line = flightLine(muzzle, fit.value.axis);
  const middle = (path.length - 1) / 2;
  const along = path.map(([x, y]) => line.along(x, y));
  const above = along.reduce((sum, s, i) => sum + s * (i - middle), 0);
  return above / along.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
}

const bar = (from: Point, to: Point): KnownLength => ({
  ...{ from, to, length: 0.2, u: 5e-5, endpointU: 0.3, depthOffset: 0, depthOffsetU: 0.002 },
});
const FRAME = { width: 1024, height: 256, pixelAspect: 1 };
const scaleOf = (length: KnownLength, muzzle: Point) => {
  const scale: Scale = {
    ...{ lengths: [length], cameraDistance: { value: 1.2, u: 0.02 }, plane: null, lens: null },
  };
  const found = determineScale(scale, FRAME, muzzle);
  if (!found.ok) throw new Error(found.reason.message);
  return found.value;
};

describe('speed', () => {
  it('does not depend on how the picture is turned, mirrored or enlarged', () => {
    fc.assert(
      fc.property(flight, change, place, angle, (one, by, muzzle, lies) => {
        const path = pathOf(one);
        const ends: [Point, Point] = [
          [100, 50],
          [100 + 600 * Math.cos(lies), 50 + 600 * Math.sin(lies)],
        ];
        const speed = (of: (at: Point) => Point) => {
          const scale = scaleOf(bar(of(ends[0]), of(ends[1])), of(muzzle)).value;
          return pace(path.map(of), of(muzzle)) * scale;
        };
        const [before, after] = [speed((at) => at), speed((at) => changed(by, at))];
        expect(before).toBeGreaterThan(0);
        expect(Math.abs(after / before - 1)).toBeLessThan(1e-9);
      }),
      SEED,
    );
  });

  it('has its sign from the direction of travel: a film run backwards goes the other way as fast', () => {
    fc.assert(
      fc.property(flight, place, (one, muzzle) => {
        const path = pathOf(one);
        expect(pace(path.toReversed(), muzzle)).toBeCloseTo(pace(path, muzzle), 8);
        const [a, b] = [path, path.toReversed()].map((points) =>
          fitAxis(points.map(([x, y]) => ({ x, y, variance: 0.01 }))),
        );
        if (!a?.ok || !b?.ok) throw new Error('no axis');
        expect(a.value.axis[0] * b.value.axis[0] + a.value.axis[1] * b.value.axis[1]).toBeCloseTo(
          -1,
          9,
        );
      }),
      SEED,
    );
  });
});

describe('scale', () => {
  it('goes with the length stated and against the pixels it covers; so does its uncertainty', () => {
    fc.assert(
      fc.property(angle, between(50, 900), between(0.2, 5), (lies, pixels, k) => {
        const end = (n: number): Point => [10 + n * Math.cos(lies), 20 + n * Math.sin(lies)];
        const one = scaleOf(bar([10, 20], end(pixels)), [0, 0]);
        expect(one.value).toBeCloseTo(0.2 / pixels, 12);
        const longer = { ...bar([10, 20], end(pixels)), length: 0.2 * k, u: 5e-5 * k };
        const by = scaleOf(longer, [0, 0]);
        expect(by.value / one.value / k).toBeCloseTo(1, 9);
        expect(by.u / one.u / k).toBeCloseTo(1, 9);
        const finer = scaleOf({ ...bar([10, 20], end(k * pixels)), endpointU: 0.3 * k }, [0, 0]);
        expect((finer.value / one.value) * k).toBeCloseTo(1, 9);
        expect((finer.u / one.u) * k).toBeCloseTo(1, 9);
      }),
      SEED,
    );
  });
});

describe('the flight line', () => {
  it('gives back a point from how far along and across it lies', () => {
    fc.assert(
      fc.property(place, angle, place, (muzzle, heading, [x, y]) => {
        const line = flightLine(muzzle, [Math.cos(heading), Math.sin(heading)]);
        const [px, py] = line.pointAt(line.along(x, y));
        const across = line.across(x, y);
        expect(px - across * line.axis[1]).toBeCloseTo(x, 8);
        expect(py + across * line.axis[0]).toBeCloseTo(y, 8);
      }),
      SEED,
    );
  });

  it('turns a covariance with the picture', () => {
    fc.assert(
      fc.property(angle, angle, between(0, 4), between(0, 4), (heading, turn, a, b) => {
        const line = flightLine([0, 0], [Math.cos(heading), Math.sin(heading)]);
        const turned = flightLine([0, 0], [Math.cos(heading + turn), Math.sin(heading + turn)]);
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const varX = c * c * a + s * s * b;
        const varY = s * s * a + c * c * b;
        expect(turned.alongU(varX, varY, c * s * (a - b))).toBeCloseTo(line.alongU(a, b, 0), 6);
      }),
      SEED,
    );
  });
});

/** The picture of a rectangle: four corners clockwise, each moved a little. */
const corners = fc
  .tuple(
    place,
    between(100, 800),
    between(100, 800),
    fc.array(fc.tuple(between(-0.15, 0.15), between(-0.15, 0.15)), { minLength: 4, maxLength: 4 }),
  )
  .map(([[x, y], width, height, moved]): [Point, Point, Point, Point] => {
    const at = (i: number, right: number, down: number): Point => [
      x + width * (right + (moved[i]?.[0] ?? 0)),
      y + height * (down + (moved[i]?.[1] ?? 0)),
    ];
    return [at(0, 0, 0), at(1, 1, 0), at(2, 1, 1), at(3, 0, 1)];
  })
  .filter((four) => checkCorners(four).ok);
/** A place within four corners. */
const inside = (
  [a, b, c, d]: readonly [Point, Point, Point, Point],
  u: number,
  v: number,
): Point => {
  const mix = (i: 0 | 1) =>
    (1 - u) * (1 - v) * a[i] + u * (1 - v) * b[i] + u * v * c[i] + (1 - u) * v * d[i];
  return [mix(0), mix(1)];
};
const share = between(0.02, 0.98);

describe('a homography', () => {
  it('takes its four points where it should, and every point there and back', () => {
    fc.assert(
      fc.property(corners, corners, share, share, (from, to, u, v) => {
        const there = homographyOf(from, to);
        from.forEach((corner, i) => {
          const [x, y] = through(there, corner);
          expect(x).toBeCloseTo(to[i]?.[0] ?? Number.NaN, 6);
          expect(y).toBeCloseTo(to[i]?.[1] ?? Number.NaN, 6);
        });
        const at = inside(from, u, v);
        const [x, y] = through(inverted(there), through(there, at));
        expect(x).toBeCloseTo(at[0], 6);
        expect(y).toBeCloseTo(at[1], 6);
      }),
      SEED,
    );
  });

  it('is that of the way back where the points change places', () => {
    fc.assert(
      fc.property(corners, corners, share, share, (from, to, u, v) => {
        const at = inside(to, u, v);
        const [x, y] = through(homographyOf(to, from), at);
        const [p, q] = through(inverted(homographyOf(from, to)), at);
        expect(x).toBeCloseTo(p, 5);
        expect(y).toBeCloseTo(q, 5);
      }),
      SEED,
    );
  });
});

describe('a view', () => {
  const lens = fc.option(
    fc.record({ k1: between(-0.2, 0.1), k2: between(-0.02, 0.05) }).map(
      ({ k1, k2 }): NonNullable<Scale['lens']> => ({
        ...{ k1: { value: k1, u: 0.005 }, k2: { value: k2, u: 0.01 }, correlation: 0 },
        ...{ centre: [500, 300], centreU: 1, focal: { value: 1600, u: 3 } },
      }),
    ),
  );
  const plane = fc.option(
    fc
      .array(fc.tuple(between(-40, 40), between(-20, 20)), { minLength: 4, maxLength: 4 })
      .map((moved): NonNullable<Scale['plane']> => {
        const at = (i: number, x: number, y: number): Point => [
          x + (moved[i]?.[0] ?? 0),
          y + (moved[i]?.[1] ?? 0),
        ];
        return {
          corners: [at(0, 150, 100), at(1, 850, 100), at(2, 850, 450), at(3, 150, 450)],
          ...{
            width: 0.6,
            height: 0.3,
            u: 5e-5,
            cornerU: 0.3,
            depthOffset: 0,
            depthOffsetU: 0.002,
          },
        };
      }),
  );
  const within = fc.tuple(between(100, 900), between(80, 480));

  it('flattens image points and shows them again where they were; the muzzle stays in place', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        lens,
        plane,
        between(0.8, 1.25),
        within,
        within,
        (bent, flat, pixelAspect, muzzle, at) => {
          const scale: Scale = {
            ...{
              lengths: [bar([200, 500], [800, 500])],
              cameraDistance: null,
              plane: flat,
              lens: bent,
            },
          };
          const view = buildView(scale, { width: 1000, height: 600, pixelAspect }, muzzle);
          if (!view.ok)
            return expect(['planeDistance', 'planeCorners']).toContain(view.reason.code);
          const laid = view.value.flatten(at);
          const origin = view.value.flatten(muzzle);
          if (!laid.ok || !origin.ok)
            return expect(laid.ok ? '' : laid.reason.code).toBe('outsideLens');
          const back = view.value.show(laid.value);
          if (!back.ok) throw new Error(back.reason.message);
          looked++;
          expect(back.value[0]).toBeCloseTo(at[0], 6);
          expect(back.value[1]).toBeCloseTo(at[1], 6);
          expect(origin.value[0]).toBeCloseTo(muzzle[0], 9);
          expect(origin.value[1]).toBeCloseTo(muzzle[1], 9);
        },
      ),
      SEED,
    );
    expect(looked).toBeGreaterThan(50);
  });
});
