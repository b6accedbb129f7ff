import { beforeAll, describe, expect, test } from 'vitest';
import { findCandidates } from '../../../src/image/candidates';
import { loadVision, type Vision } from '../../../src/image/opencv';
import type { Background } from '../../../src/image/types';
import { type BallScene, expose, generator, lit, render } from './rendering';

const WIDTH = 260;
const HEIGHT = 110;
const scenery = (x: number, y: number) => 70 + 0.15 * x + 6 * Math.sin(y / 9);

const background: Background = {
  width: WIDTH,
  height: HEIGHT,
  white: 255,
  noise: { readVariance: 4, gain: 0 },
  level: Float32Array.from({ length: WIDTH * HEIGHT }, (_, p) =>
    scenery(p % WIDTH, Math.floor(p / WIDTH)),
  ),
};

let vision: Vision;
beforeAll(async () => {
  vision = await loadVision();
});

const look = (scene: Partial<BallScene>, radius = 22, blur: readonly [number, number] = [0, 0]) =>
  findCandidates(
    expose(
      render({
        width: WIDTH,
        height: HEIGHT,
        centre: [130, 55],
        radius,
        background: scenery,
        shade: lit(200),
        blur,
        ...scene,
      }),
      WIDTH,
      HEIGHT,
      2,
      generator(11),
    ),
    background,
    { radius: 22, blur: [0, 0], region: [0, 0, WIDTH, HEIGHT] },
    vision,
  );

describe('candidates', () => {
  test.each([
    ['a bright ball', {}],
    ['a dark ball', { shade: () => 25 }],
    ['a ball off the pixel grid', { centre: [97.4, 41.7] as const }],
  ])('%s is found near its centre, whole', (_, scene) => {
    const [best, ...others] = look(scene);
    const [x, y] = ('centre' in scene && scene.centre) || [130, 55];
    expect(best).toBeDefined();
    expect(Math.hypot((best?.x ?? 0) - x, (best?.y ?? 0) - y)).toBeLessThan(0.15 * 22);
    expect(best?.score).toBeGreaterThan(0.75);
    expect(best?.visible).toBeGreaterThan(0.9);
    expect(others).toEqual([]);
  });

  test('blur of one radius does not lose it', () => {
    const [best] = look({}, 22, [22, 0]);
    expect(Math.hypot((best?.x ?? 0) - 130, (best?.y ?? 0) - 55)).toBeLessThan(0.2 * 22);
  });

  test('half a ball behind a wall is found with its share', () => {
    const [best] = look({ wall: (x) => x < 130 });
    expect(best).toBeDefined();
    expect(Math.abs((best?.x ?? 0) - 130)).toBeLessThan(0.5 * 22);
    expect(best?.visible).toBeGreaterThan(0.4);
    expect(best?.visible).toBeLessThan(0.85);
  });

  test('a ball cut by the border of the frame is found', () => {
    const [best] = look({ centre: [254, 55] });
    expect(best).toBeDefined();
    expect(Math.abs((best?.x ?? 0) - 254)).toBeLessThan(0.4 * 22);
  });

  test('fragments against the ball do not hide it, and small ones alone are nothing', () => {
    const fragment = (x: number, y: number) =>
      (Math.abs(x - 155) < 9 && Math.abs(y - 50) < 6) ||
      (Math.abs(x - 60) < 6 && Math.abs(y - 80) < 4)
        ? 150
        : null;
    const [best] = look({ fragment });
    expect(Math.hypot((best?.x ?? 0) - 130, (best?.y ?? 0) - 55)).toBeLessThan(0.3 * 22);
    expect(look({ fragment, centre: [-80, 55] })).toEqual([]);
  });

  test('an empty frame has none, and a larger disc scores lower than the ball', () => {
    expect(look({ centre: [-80, 55] })).toEqual([]);
    const large = look({}, 40)[0]?.score ?? 0;
    expect(large).toBeLessThan((look({})[0]?.score ?? 0) - 0.15);
  });

  test('only the region is searched', () => {
    const frame = expose(
      render({ width: WIDTH, height: HEIGHT, centre: [130, 55], radius: 22, background: scenery }),
      WIDTH,
      HEIGHT,
      2,
      generator(12),
    );
    const ball = { radius: 22, blur: [0, 0], region: [0, 0, 60, HEIGHT] } as const;
    expect(findCandidates(frame, background, ball, vision)).toEqual([]);
  });
});
