import { describe, expect, it } from 'vitest';
import { budgetExit } from '../../../src/exit/determineExit';
import type { FlightPoint, SharedInputs } from '../../../src/exit/types';
import { HIGH_SPEED, simulate } from './shots';

const checksOf = (points: readonly FlightPoint[], shared: SharedInputs) => {
  const outcome = budgetExit(points, shared, {
    model: 'quadraticDragPrior',
    robust: false,
    coverage: 0.95,
    seed: 1,
  });
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value.report.fit.checks;
};
const checkOf = (code: string, ...[points, shared]: Parameters<typeof checksOf>) => {
  const check = checksOf(points, shared).find((one) => one.code === code);
  if (check === undefined) throw new Error(`There is no check ${code}.`);
  return check;
};
const { points, shared } = simulate({ ...HIGH_SPEED, frames: 20 }, 8);

// 300 shots with a false alarm in a hundred: more than 10 about once in two thousand.
it.each(['leverage', 'trendAlongFrame'])(
  '%s fails by chance in about one shot of a hundred',
  (code) => {
    let failed = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const shot = simulate({ ...HIGH_SPEED, frames: 20 }, seed);
      if (!checkOf(code, shot.points, shot.shared).passed) failed++;
    }
    expect(failed).toBeLessThanOrEqual(10);
  },
);

describe('leverage', () => {
  it('names the frame with the greatest say and the speed without it', () => {
    const { passed, message } = checkOf('leverage', points, shared);
    expect(passed).toBe(true);
    const [, frame, speed] = /frame (\d+),.*would be about ([\d.]+) m\/s/.exec(message) ?? [];
    const rest = points.filter((point) => String(point.frame) !== frame);
    expect(rest).toHaveLength(points.length - 1);
    const again = budgetExit(rest, shared, {
      model: 'quadraticDragPrior',
      robust: false,
      coverage: 0.95,
      seed: 1,
    });
    if (!again.ok) throw new Error(again.reason.message);
    const { value, u } = again.value.report.exitVelocity;
    expect(Math.abs(Number(speed) - value)).toBeLessThan(0.25 * u);
  });

  it('fails where that frame is off', () => {
    const spoiled = points.map((point, i) =>
      i === 0 ? { ...point, along: point.along + 20 * point.alongU } : point,
    );
    expect(checkOf('leverage', spoiled, shared)).toMatchObject({ passed: false });
  });

  it('fails where nothing checks a frame', () => {
    const lonely = [...points.slice(0, 1), ...points.slice(12)];
    const { passed, message } = checkOf('leverage', lonely, shared);
    expect(passed).toBe(false);
    expect(message).toContain('alone decides');
  });
});

describe('the trend along the frame', () => {
  it('is seen where the lens bends the picture', () => {
    const bent = points.map((point) => {
      const place = (point.along - 400) / 400;
      return { ...point, along: point.along + 2 * place ** 3 };
    });
    const { passed, remedy } = checkOf('trendAlongFrame', bent, shared);
    expect(passed).toBe(false);
    expect(remedy).toContain('lens');
  });

  it('needs six frames', () => {
    expect(checkOf('trendAlongFrame', points.slice(0, 5), shared).message).toContain('Too few');
  });
});
