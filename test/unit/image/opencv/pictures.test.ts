import { expect, test } from 'vitest';
import { loadVision } from '../../../../src/image/opencv/vision';

test('pieces of a mask come with area, box and centroid', async () => {
  const vision = await loadVision();
  const width = 12;
  const height = 6;
  const mask = new Uint8Array(width * height);
  for (const [x, y] of [
    [1, 1],
    [2, 1],
    [1, 2],
    [2, 2],
    [3, 3],
  ] as const)
    mask[y * width + x] = 255;
  mask[5 * width + 10] = 1;
  const pieces = vision.components(mask, width, height);
  expect(pieces).toEqual([
    // Joined over the corner; the centroid is the mean of the pixels' places.
    { area: 5, x: 1, y: 1, w: 3, h: 3, cx: 1.8, cy: 1.8 },
    { area: 1, x: 10, y: 5, w: 1, h: 1, cx: 10, cy: 5 },
  ]);
  expect(vision.components(new Uint8Array(20), 5, 4)).toEqual([]);
});

test('correlation is 1 where the picture is a scaled copy of the template and 0 where it is flat', async () => {
  const vision = await loadVision();
  const template = { width: 3, height: 3, data: Float32Array.of(0, 1, 0, 1, 2, 1, 0, 1, 0) };
  const image = { width: 9, height: 5, data: new Float32Array(45).fill(10) };
  template.data.forEach((value, i) => {
    image.data[(1 + Math.floor(i / 3)) * 9 + 5 + (i % 3)] = 10 + 3 * value;
  });
  const { data, width, height } = vision.correlate(image, template);
  expect([width, height]).toEqual([7, 3]);
  expect(data[1 * 7 + 5]).toBeCloseTo(1, 4);
  expect(data[0]).toBe(0);
  expect(Math.max(...data)).toBeLessThan(1.001);
});

test('pictures whose size does not fit their values are refused', async () => {
  const vision = await loadVision();
  expect(() => vision.components(new Uint8Array(10), 5, 3)).toThrow(/5 x 3/);
  const small = { width: 2, height: 2, data: new Float32Array(4) };
  const large = { width: 3, height: 3, data: new Float32Array(9) };
  expect(() => vision.correlate(small, large)).toThrow(/3 x 3/);
});
