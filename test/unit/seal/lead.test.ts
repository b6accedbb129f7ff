import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../../src/core/estimate';
import { leadOf } from '../../../src/seal/lead';

const time = (value: number, u: number): Quantity => ({
  value,
  u,
  interval: [value - 1.96 * u, value + 1.96 * u],
  coverage: 0.95,
  dof: null,
});
/** A burst known only to lie within `half`. */
const within = (value: number, half: number, clockU: number) => ({
  burst: time(value, Math.hypot(half / Math.sqrt(3), clockU)),
  film: {
    times: Array.from({ length: 401 }, (_, i) => value + half * (i / 200 - 1)),
    weights: new Array<number>(401).fill(1),
  },
});

describe('leadOf', () => {
  it('keeps the rectangular spread of the burst', () => {
    const lead = leadOf(time(10, 1e-9), within(6, 1, 0), 0, 0.95);
    expect(lead.value).toBeCloseTo(4, 9);
    // k u = 0.95 a (JCGM 100:2008, G.6.5).
    expect(lead.interval[1] - lead.interval[0]).toBeCloseTo(1.9, 1);
  });

  it('loses what both times owe to one clock', () => {
    const shared = 0.5;
    const apart = leadOf(time(10, shared), within(6, 0.2, shared), 0, 0.95);
    const together = leadOf(time(10, shared), within(6, 0.2, shared), shared ** 2, 0.95);
    expect(apart.u).toBeCloseTo(Math.hypot(shared, shared, 0.2 / Math.sqrt(3)), 3);
    expect(together.u).toBeCloseTo(0.2 / Math.sqrt(3), 3);
    expect(together.interval[1] - together.interval[0]).toBeLessThan(0.45);
  });
});
