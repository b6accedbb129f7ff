import { describe, expect, it } from 'vitest';
import { coverageFactor } from '../../../src/core/statistics';
import { followMark } from '../../../src/tracking/mark';
import { generator } from '../image/rendering';
import { FRONT, facesOf, type MarkedFilm, RATE, SIDE } from './markedBall';

const follow = (film: MarkedFilm) => followMark(facesOf(film), 1 / RATE);

/** An axis off the line of sight as the estimate takes it to be: 0.1 each way. */
function drawnAxis(seed: number): { readonly axis: readonly [number, number, number] } {
  const random = generator(seed + 7000);
  const [x, y] = [0.1 * random.normal(), 0.1 * random.normal()];
  const length = Math.hypot(x, y, 1);
  return { axis: [x / length, y / length, 1 / length] };
}

const TRIALS = 40;

describe('rate of a marked ball', () => {
  // 40 trials of true coverage 95 % have fewer than 34 hits about once in a hundred.
  it.each([
    ['spot', 0, FRONT],
    ['spot', -200, FRONT],
    ['spot', 1500, FRONT],
    ['spot', 1500, SIDE],
    ['stripe', 1500, FRONT],
    ['bright', -1500, FRONT],
  ] as const)('%s at %d rad/s', (mark, spin, light) => {
    let told = 0;
    let held = 0;
    for (let seed = 1; seed <= TRIALS; seed++) {
      const { axis } = drawnAxis(seed);
      // `spin` is the part about the line of sight.
      const turning = follow({ seed, mark, light, axis, spin: spin / axis[2] });
      if (!turning.ok) continue;
      told++;
      const { rate, u, dof } = turning.value;
      if (Math.abs(rate - spin) < coverageFactor(0.95, dof) * u) held++;
    }
    expect(told).toBeGreaterThan(0.2 * TRIALS);
    expect(held / told).toBeGreaterThan(0.85);
  });

  it('is found where the ball turns many times while it is filmed', () => {
    const turning = follow({ seed: 4, mark: 'spot', light: FRONT, spin: 16_000, frames: 24 });
    if (!turning.ok) throw new Error(turning.reason.message);
    const { rate, u } = turning.value;
    expect(Math.abs(rate - 16_000)).toBeLessThan(3 * u);
    // After full turns the axis hardly matters.
    expect(u).toBeLessThan(400);
  });

  it('says which other rates a stripe allows', () => {
    const turning = follow({ seed: 4, mark: 'stripe', light: FRONT, spin: 1500 });
    if (!turning.ok) throw new Error(turning.reason.message);
    // A stripe through the middle looks the same after half a turn.
    const half = Math.PI * RATE;
    expect(
      turning.value.others.some((other) => Math.abs(Math.abs(other - 1500) - half) < 300),
    ).toBe(true);
  });
});

describe('a ball without a mark', () => {
  it('never gets a rate, whatever the light and whatever passes before it', () => {
    const given: number[] = [];
    const codes = new Set<string>();
    for (let seed = 1; seed <= 200; seed++) {
      const turning = follow({
        seed,
        mark: 'none',
        spin: 800,
        light: seed % 2 === 0 ? SIDE : FRONT,
        highlight: seed % 3 === 0,
        passers: seed % 4 === 0 ? [seed % 7, (seed % 7) + 1, (seed % 7) + 2] : [],
        frames: 7,
      });
      if (turning.ok) given.push(seed);
      else codes.add(turning.reason.code);
    }
    expect(given).toEqual([]);
    expect(codes).toContain('noMark');
  });

  it('and a bright spot that stands still is taken for light', () => {
    const turning = follow({ seed: 2, mark: 'bright', light: FRONT, spin: 0 });
    expect(turning.ok || turning.reason.code).toBe('noMark');
  });
});

describe('rotation about another axis', () => {
  it.each([
    ['across the flight', [0, 1, 0]],
    ['along the flight', [1, 0, 0]],
  ] as const)('%s is refused', (_name, axis) => {
    for (let seed = 1; seed <= 12; seed++) {
      const turning = follow({ seed, mark: 'spot', light: FRONT, spin: 1500, axis });
      expect(turning.ok).toBe(false);
    }
  });
});

it('needs four faces', () => {
  const turning = follow({ seed: 1, mark: 'spot', light: FRONT, spin: 1500, frames: 3 });
  expect(turning.ok || turning.reason.code).toBe('fewFaces');
});
