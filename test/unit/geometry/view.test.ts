import { describe, expect, it } from 'vitest';
import { determineScale } from '../../../src/geometry/scale';
import { buildView, type View } from '../../../src/geometry/view';
import type { Scale } from '../../../src/shot/schema';
import { normalStream } from '../noise';
import { type Pinhole, type Point3, shows } from './pinhole';

const DEPTH = 1.2;
const FRAME = { width: 1024, height: 512, pixelAspect: 1 };
const straight: Pinhole = {
  focal: 1600,
  principal: [511.5, 255.5],
  k1: 0,
  k2: 0,
  yaw: 0,
  pitch: 0,
};
/** A place on the flight plane, which stands across the world's z axis. */
const onFlight = (x: number, y: number): Point3 => [x, y, DEPTH];
const shown = (camera: Pinhole, x: number, y: number, z = DEPTH) => shows(camera, [x, y, z]);

const lensOf = ({ k1, k2, principal, focal, aspect = 1 }: Pinhole): NonNullable<Scale['lens']> => ({
  k1: { value: k1, u: 0.005 },
  k2: { value: k2, u: 0.01 },
  correlation: -0.9,
  centre: [principal[0] / aspect, principal[1]],
  centreU: 1,
  focal: { value: focal, u: 3 },
});

const planeOf = (camera: Pinhole, behind = 0): NonNullable<Scale['plane']> => {
  const at = (x: number, y: number) => shown(camera, x, y, DEPTH + behind);
  return {
    corners: [at(-0.3, -0.1), at(0.3, -0.1), at(0.3, 0.1), at(-0.3, 0.1)],
    width: 0.6,
    height: 0.2,
    u: 5e-5,
    cornerU: 0.3,
    depthOffset: behind,
    depthOffsetU: 0.002,
  };
};

const barOf = (camera: Pinhole, behind = 0): Scale['lengths'][number] => ({
  from: shown(camera, -0.1, 0.05, DEPTH + behind),
  to: shown(camera, 0.1, 0.05, DEPTH + behind),
  length: 0.2,
  u: 5e-5,
  endpointU: 0.3,
  depthOffset: behind,
  depthOffsetU: 0.002,
});

const scaleOf = (camera: Pinhole, change: Partial<Scale> = {}): Scale => ({
  lengths: [barOf(camera)],
  cameraDistance: null,
  plane: null,
  lens: null,
  ...change,
});

const viewOf = (scale: Scale, muzzle: readonly [number, number], frame = FRAME): View => {
  const view = buildView(scale, frame, muzzle);
  if (!view.ok) throw new Error(view.reason.message);
  return view.value;
};

/** Metres between two places on the flight plane as the view has them. */
function measured(view: View, metresPerPixel: number, camera: Pinhole, a: Point3, b: Point3) {
  const [p, q] = [a, b].map((place) => {
    const flat = view.flatten(shows(camera, place));
    if (!flat.ok) throw new Error(flat.reason.message);
    return flat.value;
  }) as [readonly [number, number], readonly [number, number]];
  return Math.hypot(q[0] - p[0], q[1] - p[1]) * metresPerPixel;
}

const CAMERAS: readonly (readonly [string, Pinhole])[] = [
  ['square', straight],
  ['bent', { ...straight, k1: -0.25, k2: 0.08 }],
  ['tilted', { ...straight, yaw: 0.3, pitch: -0.1 }],
  ['bent and tilted', { ...straight, k1: -0.2, k2: 0.04, yaw: -0.2, pitch: 0.15 }],
  ['of oblong pixels', { ...straight, k1: -0.1, yaw: 0.1, aspect: 1.2 }],
];

describe('a view by lens and plane', () => {
  it.each(CAMERAS)('measures lengths anywhere: %s', (_, camera) => {
    const scale = scaleOf(camera, { lens: lensOf(camera), plane: planeOf(camera) });
    const frame = { ...FRAME, pixelAspect: camera.aspect ?? 1 };
    const view = viewOf(scale, shown(camera, -0.2, 0), frame);
    for (const [x, y] of [
      [-0.25, 0.02],
      [0.05, -0.06],
      [0.2, 0.08],
    ] as const) {
      const [a, b] = [onFlight(x, y), onFlight(x + 0.04, y + 0.03)];
      expect(measured(view, view.metresPerPixel ?? 0, camera, a, b)).toBeCloseTo(0.05, 9);
    }
    // Flat pixels are the image's own at the muzzle.
    const local = view.jacobianAt(shown(camera, -0.2, 0));
    if (!local.ok) throw new Error(local.reason.message);
    const [a, b, c, d] = local.value;
    expect(a * d - b * c).toBeCloseTo(1, 6);
  });

  it.each([
    ['by the focal length', 'lens'],
    ['by the camera distance', 'distance'],
  ] as const)('takes a plane behind the flight line to the flight line %s', (_, by) => {
    const camera: Pinhole = { ...straight, yaw: 0.3, pitch: -0.1 };
    const behind = 0.06;
    // Along the camera's axis, to the flight plane: the plane's own axis is turned by yaw and pitch.
    const distance = DEPTH / (Math.cos(0.3) * Math.cos(-0.1));
    const scale = scaleOf(camera, {
      plane: planeOf(camera, behind),
      ...(by === 'lens'
        ? { lens: lensOf(camera) }
        : { cameraDistance: { value: distance, u: 0.01 } }),
    });
    const view = viewOf(scale, shown(camera, -0.2, 0));
    const length = measured(
      view,
      view.metresPerPixel ?? 0,
      camera,
      onFlight(0.1, 0),
      onFlight(0.2, 0),
    );
    expect(length).toBeCloseTo(0.1, 7);
    // Where the camera stands, found again: normal and distance of the flight plane.
    const { normal, offset } = view.camera ?? view.lookingSquarely(1);
    expect(offset * (view.metresPerPixel ?? 0)).toBeCloseTo(DEPTH, 6);
    expect(normal[0]).toBeCloseTo(-Math.sin(0.3), 6);
    // Taken for the flight plane itself it would be 5 % off.
    const blind = viewOf(
      { ...scale, plane: { ...planeOf(camera, behind), depthOffset: 0 } },
      shown(camera, -0.2, 0),
    );
    const wrong = measured(
      blind,
      blind.metresPerPixel ?? 0,
      camera,
      onFlight(0.1, 0),
      onFlight(0.2, 0),
    );
    expect(wrong / 0.1).toBeGreaterThan(1.03);
  });

  it('carries a covariance as the scatter of many points has it', () => {
    const camera: Pinhole = { ...straight, k1: -0.25, yaw: 0.3 };
    const view = viewOf(
      scaleOf(camera, { lens: lensOf(camera), plane: planeOf(camera) }),
      shown(camera, -0.2, 0),
    );
    const [x, y] = shown(camera, 0.25, 0.08);
    const carried = view.flattenMeasured({ x, y, varX: 0.04, varY: 0.01, covXY: 0.005 });
    if (!carried.ok) throw new Error(carried.reason.message);
    // Points one standard deviation along each of the covariance's own axes (Cholesky), by differences.
    const along = [
      [0.2, 0.025],
      [0, Math.sqrt(0.01 - 0.025 ** 2)],
    ] as const;
    const sums = [0, 0, 0];
    for (const [dx, dy] of along) {
      const [up, down] = [1, -1].map((sign) => view.flatten([x + sign * dx, y + sign * dy]));
      if (!up?.ok || !down?.ok) throw new Error('no place');
      const [ex, ey] = [(up.value[0] - down.value[0]) / 2, (up.value[1] - down.value[1]) / 2];
      sums[0] = (sums[0] as number) + ex * ex;
      sums[1] = (sums[1] as number) + ey * ey;
      sums[2] = (sums[2] as number) + ex * ey;
    }
    expect(carried.value.varX).toBeCloseTo(sums[0] as number, 5);
    expect(carried.value.varY).toBeCloseTo(sums[1] as number, 5);
    expect(carried.value.covXY).toBeCloseTo(sums[2] as number, 5);
  });
});

describe('the scale through lens and plane', () => {
  const muzzleOf = (camera: Pinhole) => shown(camera, -0.2, 0);
  const reportOf = (camera: Pinhole, scale: Scale) => {
    const report = determineScale(scale, FRAME, muzzleOf(camera));
    if (!report.ok) throw new Error(report.reason.message);
    return report.value;
  };

  it('measures a bar behind the flight line by the focal length where no distance is stated', () => {
    const camera: Pinhole = { ...straight, k1: -0.25, k2: 0.08 };
    const scale = scaleOf(camera, { lens: lensOf(camera), lengths: [barOf(camera, 0.06)] });
    const report = reportOf(camera, scale);
    const [a, b] = [onFlight(0.1, -0.05), onFlight(0.25, 0.05)];
    const length = Math.hypot(0.15, 0.1);
    expect(measured(report.view, report.value, camera, a, b)).toBeCloseTo(length, 6);
    expect(report.sources.map(({ source }) => source)).toEqual(
      expect.arrayContaining(['camera distance', 'lens distortion', 'lens centre']),
    );
    expect(report.warnings).toEqual([]);
  });

  it('lets the plane set the scale and holds the known lengths against it', () => {
    const camera: Pinhole = { ...straight, yaw: 0.3 };
    const scale = scaleOf(camera, {
      lens: lensOf(camera),
      plane: planeOf(camera),
      lengths: [barOf(camera, 0.03)],
    });
    const report = reportOf(camera, scale);
    expect(report.lengths[0]?.value).toBeCloseTo(report.value, 9);
    expect(report.warnings).toEqual([]);
    const wrong = reportOf(camera, {
      ...scale,
      lengths: [{ ...barOf(camera, 0.03), length: 0.203 }],
    });
    expect(wrong.value).toBe(report.value);
    expect(wrong.warnings.map(({ code }) => code)).toEqual(['planeDisagrees']);
  });

  it('notices corners that are no rectangle of the stated size, and only those', () => {
    const camera: Pinhole = { ...straight, yaw: 0.3, pitch: 0.1 };
    const codesOf = (change: Partial<NonNullable<Scale['plane']>>) =>
      reportOf(
        camera,
        scaleOf(camera, { lens: lensOf(camera), plane: { ...planeOf(camera), ...change } }),
      ).warnings.map(({ code }) => code);
    const normal = normalStream(4);
    const [a, b, c, d] = planeOf(camera).corners.map(
      ([x, y]) => [x + 0.3 * normal(), y + 0.3 * normal()] as const,
    ) as unknown as NonNullable<Scale['plane']>['corners'];
    expect(codesOf({ corners: [a, b, c, d] })).toEqual([]);
    expect(codesOf({ corners: [a, b, [c[0] + 8, c[1]], d] })).toContain('notARectangle');
    expect(codesOf({ width: 0.5 })).toContain('planeDisagrees');
  });

  it('says so when neither focal length nor distance tells the depth of the plane', () => {
    const report = reportOf(straight, scaleOf(straight, { plane: planeOf(straight) }));
    expect(report.warnings.map(({ code }) => code)).toEqual(['parallaxUnknown']);
    expect(report.sources.map(({ source }) => source)).toEqual([
      'corners of the plane',
      'size of the plane',
    ]);
  });

  it('notices a focal length and a distance that contradict each other', () => {
    const report = reportOf(
      straight,
      scaleOf(straight, {
        lens: lensOf(straight),
        cameraDistance: { value: 1.4, u: 0.02 },
      }),
    );
    expect(report.warnings.map(({ code }) => code)).toEqual(['distancesDisagree']);
  });

  it('refuses points beyond the horizon of the plane', () => {
    const camera: Pinhole = { ...straight, focal: 400, yaw: 1.1 };
    const at = (x: number, y: number) => shown(camera, x, y);
    const plane = {
      ...planeOf(straight),
      corners: [at(0.9, -0.1), at(1.5, -0.1), at(1.5, 0.1), at(0.9, 0.1)] as const,
    };
    const view = viewOf(scaleOf(straight, { plane }), at(1, 0));
    const beyond = view.flatten([5000, 255]);
    const before = view.flatten([-5000, 255]);
    expect([beyond, before].filter(({ ok }) => !ok)).toMatchObject([
      { reason: { code: 'beyondHorizon' } },
    ]);
  });
});
