import { describe, expect, it } from 'vitest';
import { blurAt, centreFromMiddle, shapeAt } from '../../../src/image/ballShape';
import { measureCentre } from '../../../src/image/centre';
import type { Background, BallModel } from '../../../src/image/types';
import { type Pinhole, type Point3, shows } from '../geometry/pinhole';

/**
 * A ball filmed 20 degrees off square from ten diameters, through a lens that bends; its picture by rays: every
 * sub-pixel is freed of distortion by repetition, its ray turned into the world and tested against the sphere.
 */
const CAMERA: Pinhole = {
  focal: 900,
  principal: [400, 300],
  k1: -0.22,
  k2: 0.05,
  yaw: (20 * Math.PI) / 180,
  pitch: 0.1,
};
const RADIUS = 1;
const DEPTH = 20 * RADIUS;

/** World direction of the ray that reaches a place in the picture. */
function ray(camera: Pinhole, x: number, y: number): Point3 {
  const ud = (x * (camera.aspect ?? 1) - camera.principal[0]) / camera.focal;
  const vd = (y - camera.principal[1]) / camera.focal;
  let [u, v] = [ud, vd];
  for (let i = 0; i < 25; i++) {
    const r2 = u * u + v * v;
    const bent = 1 + camera.k1 * r2 + camera.k2 * r2 * r2;
    [u, v] = [ud / bent, vd / bent];
  }
  const y1 = Math.cos(camera.pitch) * v + Math.sin(camera.pitch);
  const z1 = -Math.sin(camera.pitch) * v + Math.cos(camera.pitch);
  return [
    Math.cos(camera.yaw) * u + Math.sin(camera.yaw) * z1,
    y1,
    -Math.sin(camera.yaw) * u + Math.cos(camera.yaw) * z1,
  ];
}

const hits = ([dx, dy, dz]: Point3, [x, y, z]: Point3): boolean => {
  const along = dx * x + dy * y + dz * z;
  const d2 = dx * dx + dy * dy + dz * dz;
  return along * along > d2 * (x * x + y * y + z * z - RADIUS * RADIUS);
};

/** Share of each pixel that the ball covers, by 12 x 12 rays, around its picture. */
function cover(camera: Pinhole, ball: Point3) {
  const [cx, cy] = shows(camera, ball).map(Math.round) as [number, number];
  const reach = 90;
  const fine = 12;
  const pixels: { x: number; y: number; share: number }[] = [];
  for (let y = cy - reach; y <= cy + reach; y++) {
    for (let x = cx - reach; x <= cx + reach; x++) {
      // Rays only where the pixel's corners and middle disagree.
      const probes = [
        [-0.5, -0.5],
        [0.5, -0.5],
        [-0.5, 0.5],
        [0.5, 0.5],
        [0, 0],
      ].map(([dx = 0, dy = 0]) => hits(ray(camera, x + dx, y + dy), ball));
      if (probes.every((hit) => hit === probes[0])) {
        if (probes[0]) pixels.push({ x, y, share: 1 });
        continue;
      }
      let inside = 0;
      for (let i = 0; i < fine; i++) {
        for (let j = 0; j < fine; j++) {
          const place = ray(camera, x + (i + 0.5) / fine - 0.5, y + (j + 0.5) / fine - 0.5);
          if (hits(place, ball)) inside++;
        }
      }
      pixels.push({ x, y, share: inside / fine ** 2 });
    }
  }
  return pixels;
}

/** The flight plane stands across the world's z axis; here in the camera's axes, in units of which the ball's radius is `px`. */
function modelOf(camera: Pinhole, px: number): BallModel {
  const turned = ([X, Y, Z]: Point3): Point3 => {
    const x1 = Math.cos(camera.yaw) * X - Math.sin(camera.yaw) * Z;
    const z1 = Math.sin(camera.yaw) * X + Math.cos(camera.yaw) * Z;
    return [
      x1,
      Math.cos(camera.pitch) * Y - Math.sin(camera.pitch) * z1,
      Math.sin(camera.pitch) * Y + Math.cos(camera.pitch) * z1,
    ];
  };
  return {
    radius: px,
    blur: [0, 0],
    region: [0, 0, 800, 600],
    camera: {
      centre: camera.principal,
      distance: camera.focal,
      plane: {
        normal: turned([0, 0, 1]),
        offset: (DEPTH * px) / RADIUS,
        across: turned([1, 0, 0]),
      },
    },
    lens: { k1: camera.k1, k2: camera.k2, centre: camera.principal, focal: camera.focal },
    pixelAspect: camera.aspect ?? 1,
  };
}

const PLACES: readonly Point3[] = [
  [7.5, 1, DEPTH],
  [3, -3, DEPTH],
  [12, 5, DEPTH],
];

describe.each([
  ['bent and tilted', CAMERA],
  ['tilted only', { ...CAMERA, k1: 0, k2: 0 }],
  ['of oblong pixels', { ...CAMERA, aspect: 1.15 }],
] as const)('the picture of a ball, %s', (_, camera) => {
  it.each(PLACES)('at (%f, %f): middle and shape of the outline', (...place) => {
    const ball: Point3 = place;
    const [x, y] = shows(camera, ball);
    const pixels = cover(camera, ball);
    const sum = (of: (pixel: (typeof pixels)[number]) => number) =>
      pixels.reduce((total, pixel) => total + pixel.share * of(pixel), 0);
    const area = sum(() => 1);
    const middle = [sum((p) => p.x) / area, sum((p) => p.y) / area] as const;
    const model = modelOf(camera, 40);
    const centre = centreFromMiddle(model, middle);
    expect(Math.hypot(centre[0] - x, centre[1] - y)).toBeLessThan(0.005);
    // The correction matters: the middle itself is off.
    expect(Math.hypot(middle[0] - x, middle[1] - y)).toBeGreaterThan(0.02);
    // In ball coordinates the picture has the ball's area, and no direction stands out.
    const [a, b, c, d] = shapeAt(model, [x, y]);
    expect((a * d - b * c) * area).toBeCloseTo(Math.PI * 40 ** 2, -0.5);
    const moment = (of: (qx: number, qy: number) => number) =>
      sum((p) => {
        const [dx, dy] = [p.x - middle[0], p.y - middle[1]];
        return of(a * dx + b * dy, c * dx + d * dy);
      }) / area;
    expect(moment((qx) => qx * qx) / moment((_qx, qy) => qy * qy)).toBeCloseTo(1, 3);
    expect(moment((qx, qy) => qx * qy) / 400).toBeCloseTo(0, 3);
  });
});

it('is measured where the ball is, not in the middle of its outline', () => {
  const ball: Point3 = [11.5, 4, DEPTH];
  const [x, y] = shows(CAMERA, ball);
  const [width, height] = [800, 600];
  const level = new Float32Array(width * height).fill(40);
  const data = new Uint8Array(width * height).fill(40);
  // Rounding of the grey values is noise enough; the softness of a pixel is that of its area.
  for (const pixel of cover(CAMERA, ball)) {
    data[pixel.y * width + pixel.x] = Math.round(40 + 160 * pixel.share);
  }
  const background: Background = {
    width,
    height,
    level,
    white: 255,
    noise: { readVariance: 1, gain: 0 },
  };
  const frame = { index: 0, width, height, data, white: 255 };
  const measured = measureCentre(frame, background, [x + 1.5, y - 1], modelOf(CAMERA, 40));
  if (!measured.ok) throw new Error(measured.reason.message);
  expect(Math.hypot(measured.value.x - x, measured.value.y - y)).toBeLessThan(0.04);
  expect(measured.value.radius.value / 40).toBeCloseTo(1, 2);
});

it('moves by what the flight plane shows of its motion', () => {
  const model: BallModel = { ...modelOf(CAMERA, 40), blur: [12, 5] };
  // In the world 12 and 5 fortieths of a radius along x and y; the picture of the two ends, by the other camera.
  const [X, Y] = [11, 3];
  const half = [12 / 80, 5 / 80] as const;
  const end = shows(CAMERA, [X + half[0], Y + half[1], DEPTH]);
  const start = shows(CAMERA, [X - half[0], Y - half[1], DEPTH]);
  const at = shows(CAMERA, [X, Y, DEPTH]);
  const [a, b, c, d] = shapeAt(model, at);
  const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
  const [bx, by] = blurAt(model, at);
  expect(bx).toBeCloseTo(a * dx + b * dy, 6);
  expect(by).toBeCloseTo(c * dx + d * dy, 6);
});
