import { describe, expect, it } from 'vitest';
import { rateFromLamp, rateFromTimer } from '../../../src/clock/rateCheck';
import { normalStream } from '../noise';

describe('rateFromTimer', () => {
  it('divides frames by the time read off the timer', () => {
    const rate = rateFromTimer(100, 1300, 0.1, 0.0005);
    expect(rate.ok && rate.value.value).toBeCloseTo(12_000, 6);
    // sqrt2 * 0.5 ms of 100 ms, and sqrt(1/6) frames of 1200.
    expect(rate.ok && rate.value.u / rate.value.value).toBeCloseTo(
      Math.hypot((Math.SQRT2 * 0.0005) / 0.1, Math.sqrt(1 / 6) / 1200),
      9,
    );
  });

  it.each([
    [10, 10, 1, 'timerFrames'],
    [0, 10, 0, 'timerElapsed'],
  ] as const)('refuses frames %d to %d in %d s', (from, to, elapsed, code) => {
    const rate = rateFromTimer(from, to, elapsed, 0);
    expect(rate.ok ? 'given' : rate.reason.code).toBe(code);
  });
});

describe('rateFromLamp', () => {
  it('finds the true rate within its own uncertainty, shot after shot', () => {
    let inside = 0;
    const shots = 60;
    for (let seed = 0; seed < shots; seed++) {
      const noise = normalStream(seed);
      const trueRate = 11_700 + 10 * seed;
      const levels = Array.from(
        { length: 1200 },
        (_, i) => 100 + 3 * Math.sin((2 * Math.PI * 100 * i) / trueRate + seed) + noise(),
      );
      const rate = rateFromLamp(levels, 100, 12_000);
      if (!rate.ok) throw new Error(rate.reason.message);
      if (Math.abs(rate.value.value - trueRate) < 2 * rate.value.u) inside++;
      expect(Math.abs(rate.value.value / trueRate - 1)).toBeLessThan(0.01);
    }
    expect(inside).toBeGreaterThan(0.85 * shots);
  });

  it('says when there is no flicker, or too little of it', () => {
    const noise = normalStream(1);
    const flat = rateFromLamp(
      Array.from({ length: 1200 }, () => 100 + noise()),
      100,
      12_000,
    );
    expect(flat.ok ? 'given' : flat.reason.code).toBe('noFlicker');
    const short = rateFromLamp(
      Array.from({ length: 100 }, () => 1),
      100,
      12_000,
    );
    expect(short.ok ? 'given' : short.reason.code).toBe('lampTooShort');
  });
});
