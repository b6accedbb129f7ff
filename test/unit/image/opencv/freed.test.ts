import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { cv, withMats } from '../../../../src/image/opencv/library';
import { loadVision, type Vision } from '../../../../src/image/opencv/vision';
import { watchMats } from '../../../fixtures/mats';

let vision: Vision;
beforeAll(async () => {
  vision = await loadVision();
});

describe('the memory of OpenCV', () => {
  let mats: ReturnType<typeof watchMats>;
  beforeEach(() => {
    mats = watchMats();
  });
  afterEach(() => mats.end());

  const grid = Array.from({ length: 35 }, (_, i): [number, number] => [i % 7, Math.floor(i / 7)]);
  /** A flat target as a camera of focal length 600 px sees it, turned about both axes. */
  const view = (about: number, over: number) => ({
    target: grid,
    image: grid.map(([x, y]): [number, number] => {
      const [u, v] = [x - 3, y - 2];
      const depth = 12 + u * Math.sin(about) + v * Math.sin(over);
      return [160 + (600 * u * Math.cos(about)) / depth, 120 + (600 * v * Math.cos(over)) / depth];
    }),
  });
  const plane = (width: number, height: number) => ({
    ...{ width, height },
    data: Float32Array.from({ length: width * height }, (_, i) => (i * 7) % 11),
  });

  it.each<[string, number, () => unknown]>([
    ['pieces', 4, () => vision.components(new Uint8Array(30).fill(1), 6, 5)],
    ['correlation', 3, () => vision.correlate(plane(9, 7), plane(3, 3))],
    [
      'a camera',
      20,
      () => vision.fitCamera([view(0.3, 0.1), view(-0.2, 0.4), view(0.1, -0.3)], 320, 240),
    ],
  ])('is given back after %s', (_, fewest, work) => {
    work();
    expect(mats.opened()).toBeGreaterThanOrEqual(fewest);
    expect(mats.left()).toBe(0);
  });

  it.each<[string, () => unknown]>([
    [
      'a camera from views of unlike lengths',
      () => vision.fitCamera([{ target: grid, image: grid.slice(1) }], 320, 240),
    ],
    ['a camera from no view', () => vision.fitCamera([], 320, 240)],
    [
      'Mats at work on which something fails',
      () =>
        withMats(2, () => {
          throw new Error('on purpose');
        }),
    ],
    ['a Mat that the library cannot make', () => withMats(1, () => new cv.Mat(-1, -1, 0))],
  ])('is given back after a failure: %s', (_, work) => {
    expect(work).toThrow();
    expect(mats.opened()).toBeGreaterThan(0);
    expect(mats.left()).toBe(0);
  });
});
