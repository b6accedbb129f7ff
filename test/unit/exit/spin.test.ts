import { describe, expect, it } from 'vitest';
import { determineSpin } from '../../../src/exit/spin';

const shot = {
  rate: 900,
  u: 12,
  dof: 8,
  others: [],
  alias: 2 * Math.PI * 12_000,
  clockU: 0.01,
  speed: 180,
  ballRadius: 0.015,
  coverage: 0.95,
};

describe('spin with its budget', () => {
  it('adds what the clock is not known to', () => {
    const { spin, warnings } = determineSpin(shot);
    expect(spin.value).toBe(900);
    expect(spin.u).toBeCloseTo(Math.hypot(12, 9), 10);
    // Welch and Satterthwaite: 15^4 / (12^4 / 8).
    expect(spin.dof).toBeCloseTo(15 ** 4 / (12 ** 4 / 8), 8);
    expect(warnings).toEqual([]);
  });

  it('warns of a rate a full turn a frame away only where a ball may turn that fast', () => {
    // A ball at 180 m/s that rolls along the bore turns at 12 000 rad/s: at 240 frames/s aliases lie 1508 rad/s apart.
    const { spin, warnings } = determineSpin({
      ...shot,
      rate: 500,
      alias: 2 * Math.PI * 240,
    });
    expect(spin.value).toBe(500);
    expect(warnings.map(({ code }) => code)).toEqual(['spinAmbiguous']);
    expect(warnings[0]?.message).toContain('-1008');
  });

  it('warns of another rate that the mark itself allows', () => {
    const { warnings } = determineSpin({ ...shot, others: [5000] });
    expect(warnings.map(({ code }) => code)).toEqual(['spinAmbiguous']);
  });
});
