import { describe, expect, test } from 'vitest';
import { inspectCentre } from '../../../src/image/inspect';
import type { Background, BallModel } from '../../../src/image/types';
import { type BallScene, expose, generator, lit, render } from './rendering';

const SIZE = 90;
const background: Background = {
  width: SIZE,
  height: SIZE,
  white: 255,
  noise: { readVariance: 9 + 1 / 12, gain: 0 },
  level: new Float32Array(SIZE * SIZE).fill(60),
};
const ball: BallModel = { radius: 16, blur: [0, 0], region: [0, 0, SIZE, SIZE] };
const truth = { width: SIZE, height: SIZE, centre: [45.3, 44.6] as const, radius: 16, optics: 0.6 };

const inspect = (scene: Partial<BallScene>, at: readonly [number, number] = [45, 45]) => {
  const image = render({ ...truth, ...scene });
  const frame = expose(image, SIZE, SIZE, 3, generator(11), 7);
  return { image, open: inspectCentre(frame, background, at, ball) };
};

describe('one fit laid open', () => {
  test('model, residual and weight agree with what was drawn', () => {
    const { image, open } = inspect({ shade: lit(220) });
    const { model, residual, weight, rect } = open;
    if (model === null || residual === null || weight === null) throw new Error('no fit');
    expect(open.frame).toBe(7);
    expect(model.length).toBe(rect[2] * rect[3]);
    let worst = 0;
    let squares = 0;
    let weighed = 0;
    for (let q = 0; q < model.length; q++) {
      const p = (rect[1] + Math.floor(q / rect[2])) * SIZE + rect[0] + (q % rect[2]);
      worst = Math.max(worst, Math.abs((model[q] as number) - (image[p] as number)));
      if ((weight[q] as number) < 0.5) continue;
      weighed++;
      squares += (residual[q] as number) ** 2;
    }
    // Within four standard deviations of one pixel's noise everywhere, and residuals of about one.
    expect(worst).toBeLessThan(12);
    expect(weighed).toBeGreaterThan(Math.PI * 15 ** 2);
    expect(Math.abs(Math.sqrt(squares / weighed) - 1)).toBeLessThan(0.1);
    expect(open.outline.every(({ seen }) => seen)).toBe(true);
    // Beyond the reach of the fit pixels are neither weighed nor thrown out.
    expect(weight[0]).toBe(-1);
    expect(weight.filter((one) => one === 0).length).toBeLessThan(0.01 * weighed);
    for (const { at } of open.outline) {
      const off = Math.hypot(at[0] - truth.centre[0], at[1] - truth.centre[1]) - truth.radius;
      expect(Math.abs(off)).toBeLessThan(0.3);
    }
  });

  test('what hides the ball has no weight, and its side of the outline is not seen', () => {
    const { open } = inspect({ wall: (x) => x < 45 }, [49, 45]);
    const left = open.outline.filter(({ at }) => at[0] < 41);
    const right = open.outline.filter(({ at }) => at[0] > 50);
    expect(left.length).toBeGreaterThan(10);
    expect(left.some(({ seen }) => seen)).toBe(false);
    expect(right.every(({ seen }) => seen)).toBe(true);
    const { weight, rect } = open;
    if (weight === null) throw new Error('no fit');
    const masked = Array.from(weight).filter((one, q) => one === 0 && rect[0] + (q % rect[2]) < 42);
    expect(masked.length).toBeGreaterThan(150);
  });

  test('a refused frame shows its fit; an empty one says why there is none', () => {
    const small = inspect({ radius: 18.2 });
    expect(small.open.measurement).toMatchObject({ ok: false, reason: { code: 'radiusMismatch' } });
    const none = inspect({ centre: [-60, 45] }).open;
    expect(none.measurement).toMatchObject({ ok: false, reason: { code: 'noBall' } });
    expect(none.model).toBeNull();
    expect(none.outline).toEqual([]);
  });
});
