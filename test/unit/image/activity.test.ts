import { describe, expect, test } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { seededRandom } from '../../../src/core/random';
import { createActivityMeter } from '../../../src/image/activity';

const [WIDTH, HEIGHT] = [160, 64] as const;

interface Drawn {
  readonly disc?: { readonly x: number; readonly radius: number; readonly contrast: number };
  readonly light?: number;
  readonly noise?: number;
}

/** A textured wall, and a disc on the middle line. */
function drawer(seed: number) {
  const random = seededRandom(seed);
  const wall = Float64Array.from({ length: WIDTH * HEIGHT }, () => 60 + 80 * random.uniform());
  let index = 0;
  return ({ disc, light = 1, noise = 1.5 }: Drawn = {}): GreyFrame => {
    const data = Uint8Array.from(wall, (grey, p) => {
      const [x, y] = [p % WIDTH, Math.floor(p / WIDTH)];
      const inside = disc !== undefined && Math.hypot(x - disc.x, y - 32) < disc.radius;
      const value = light * (grey + (inside ? disc.contrast : 0)) + noise * random.normal();
      return Math.min(255, Math.max(0, Math.round(value)));
    });
    return { index: index++, width: WIDTH, height: HEIGHT, data, white: 255 };
  };
}

const activeIn = (frames: readonly GreyFrame[], radius = 12) => {
  const meter = createActivityMeter(WIDTH, HEIGHT, radius);
  return frames.map((frame) => meter.read(frame).isActive);
};

describe('the activity meter', () => {
  test('leaves a still scene alone, noise and all', () => {
    const draw = drawer(1);
    expect(activeIn(Array.from({ length: 40 }, () => draw()))).not.toContain(true);
  });

  test('sees a ball of little contrast in every frame that it crosses', () => {
    const draw = drawer(2);
    const place = (i: number) => (i - 20) * 20;
    const frames = Array.from({ length: 40 }, (_, i) =>
      draw({ disc: { x: place(i), radius: 12, contrast: 10 } }),
    );
    const active = activeIn(frames);
    active.forEach((isActive, i) => {
      if (place(i) > 6 && place(i) < WIDTH - 6) expect([i, isActive]).toEqual([i, true]);
    });
    expect(active.slice(0, 19)).not.toContain(true);
  });

  test('sees a ball that takes many frames for a pixel, and one of few pixels', () => {
    const draw = drawer(3);
    const slow = Array.from({ length: 30 }, (_, i) =>
      draw({ disc: { x: 60 + 0.5 * i, radius: 12, contrast: 60 } }),
    );
    expect(activeIn(slow).slice(8)).not.toContain(false);
    const tiny = Array.from({ length: 30 }, (_, i) =>
      draw({ disc: { x: 4 * i, radius: 3, contrast: 60 } }),
    );
    expect(activeIn(tiny, 3).slice(2)).not.toContain(false);
  });

  test('takes no single places that flicker for motion', () => {
    const draw = drawer(5);
    const random = seededRandom(6);
    const frames = Array.from({ length: 40 }, () => {
      const frame = draw();
      const data = frame.data.slice();
      for (let place = 0; place < 12; place++) {
        const p = (8 + 12 * Math.floor(place / 4)) * WIDTH + 20 + 36 * (place % 4);
        data[p] = 255 * random.uniform();
      }
      return { ...frame, data };
    });
    expect(activeIn(frames)).not.toContain(true);
  });

  test('takes no flicker of the lamp for motion, and tells its light', () => {
    const draw = drawer(4);
    const meter = createActivityMeter(WIDTH, HEIGHT, 12);
    for (let i = 0; i < 40; i++) {
      const light = 1 + 0.2 * Math.sin(i);
      const { isActive, gain } = meter.read(draw({ light }));
      expect(isActive).toBe(false);
      expect(gain).toBeCloseTo(light, 1);
    }
  });
});
