import { describe, expect, test } from 'vitest';
import { measureCentre } from '../../src/image/centre';
import { loadVision } from '../../src/image/opencv/vision';
import { render } from '../unit/image/rendering';

/** Area moments of a noiseless picture over its background: of order 0 and 1, and the central second ones. */
function moments(image: Float64Array, width: number, background: number) {
  let area = 0;
  let mx = 0;
  let my = 0;
  image.forEach((value, p) => {
    const share = value - background;
    area += share;
    mx += share * (p % width);
    my += share * Math.floor(p / width);
  });
  return { area, x: mx / area, y: my / area };
}

describe('disc against its exact area moments', () => {
  // Area pi R^2 and centroid in the middle for a disc; a half disc's centroid lies 4 R / (3 pi) from
  // the straight side (textbook plane areas, e.g. Gere and Timoshenko, Mechanics of Materials, app. D).
  const width = 90;
  const height = 84;
  const background = 40;

  test.each([
    [12, 44.3, 41.8],
    [25, 45.72, 40.11],
    [31.4, 44.05, 42.49],
  ])('radius %f px at (%f, %f)', (radius, x, y) => {
    const image = render({
      width,
      height,
      centre: [x, y],
      radius,
      optics: 0.6,
      shade: () => 200,
      background: () => background,
    });
    const exact = moments(image, width, background);
    // The picture itself agrees with the disc: the measurement is compared with the disc's moments.
    expect(exact.area / 160).toBeCloseTo(Math.PI * radius ** 2, -0.5);
    const found = measureCentre(
      {
        index: 0,
        width,
        height,
        white: 65_535,
        data: Uint16Array.from(image, (v) => Math.round(v * 200)),
      },
      {
        width,
        height,
        white: 65_535,
        noise: { readVariance: 100, gain: 0 },
        level: new Float32Array(width * height).fill(200 * background),
      },
      [x + 0.2 * radius, y - 0.15 * radius],
      { radius: 1.01 * radius, blur: [0, 0], region: [0, 0, width, height] },
    );
    if (!found.ok) throw new Error(found.reason.message);
    expect(Math.abs(found.value.x - exact.x)).toBeLessThan(0.005);
    expect(Math.abs(found.value.y - exact.y)).toBeLessThan(0.005);
    // The lens blur draws the half-level outline in by about sigma^2 / (2 R).
    expect(Math.abs(found.value.radius.value - Math.sqrt(exact.area / 160 / Math.PI))).toBeLessThan(
      0.05,
    );
  });

  test('centroid of a half disc found as a connected piece', async () => {
    const vision = await loadVision();
    const size = 420;
    const radius = 200;
    const mask = new Uint8Array(size * size);
    for (let py = 0; py < size; py++) {
      for (let px = 0; px < size; px++) {
        if (px >= 10 && Math.hypot(px - 9.5, py - 209.5) < radius) mask[py * size + px] = 1;
      }
    }
    const [piece, ...others] = vision.components(mask, size, size);
    expect(others).toEqual([]);
    expect(Math.abs((piece?.cx ?? 0) - (9.5 + (4 * radius) / (3 * Math.PI)))).toBeLessThan(0.05);
    expect(Math.abs((piece?.cy ?? 0) - 209.5)).toBeLessThan(0.05);
    expect(Math.abs((piece?.area ?? 0) / ((Math.PI * radius ** 2) / 2) - 1)).toBeLessThan(1e-3);
  });
});
