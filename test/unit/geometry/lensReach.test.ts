import { describe, expect, it } from 'vitest';
import { distort } from '../../../src/core/lens';
import { cornerReach } from '../../../src/geometry/lensReach';

const FRAME = { width: 641, height: 481, pixelAspect: 1 };
const lens = {
  k1: { value: -0.2, u: 0.01 },
  k2: { value: 0.05, u: 0.02 },
  correlation: 0,
  centre: [320, 240] as const,
  centreU: 2,
  focal: { value: 500, u: 5 },
};

describe('the reach of a lens', () => {
  it('is how far the corner that a perfect lens shows beyond it was drawn in', () => {
    const reach = cornerReach(lens, FRAME);
    if (!reach.ok) throw new Error(reach.reason.message);
    // The point so far out is shown in the corner, 400 px from the middle (3-4-5 triangle).
    const straight = 400 + reach.value.value;
    const radial = { k1: -0.2, k2: 0.05, centre: lens.centre, focal: 500 };
    const [x, y] = distort(radial, [320 + 0.8 * straight, 240 + 0.6 * straight]);
    expect(x).toBeCloseTo(640, 6);
    expect(y).toBeCloseTo(480, 6);
    expect(reach.value.value).toBeGreaterThan(40);
  });

  it('is known as the distortion is: terms that err together add, terms that err apart cancel', () => {
    const u = (correlation: number) => {
      const reach = cornerReach({ ...lens, correlation }, FRAME);
      return reach.ok ? reach.value.u : Number.NaN;
    };
    const alone = cornerReach({ ...lens, k2: { value: 0.05, u: 0 } }, FRAME);
    expect(alone.ok && alone.value.u).toBeGreaterThan(1);
    expect(u(1)).toBeGreaterThan(u(0));
    expect(u(-1)).toBeLessThan(u(0));
    expect(u(0) ** 2).toBeCloseTo((u(1) ** 2 + u(-1) ** 2) / 2, 6);
  });

  it('points inwards for a lens that draws out', () => {
    const reach = cornerReach({ ...lens, k1: { value: 0.2, u: 0 } }, FRAME);
    expect(reach.ok && reach.value.value).toBeLessThan(-20);
  });

  it('takes the corner farthest from a centre that is off the middle', () => {
    const off = cornerReach({ ...lens, centre: [220, 240] }, FRAME);
    const middle = cornerReach(lens, FRAME);
    expect(off.ok && middle.ok && off.value.value > middle.value.value + 20).toBe(true);
  });

  it('says so where the lens folds before the corner', () => {
    const folding = { ...lens, k1: { value: -0.9, u: 0 }, k2: { value: 0, u: 0 } };
    expect(cornerReach(folding, FRAME)).toMatchObject({
      ok: false,
      reason: { code: 'outsideLens' },
    });
  });
});
