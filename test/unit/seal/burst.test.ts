import { describe, expect, it } from 'vitest';
import { isAvailable } from '../../../src/core/estimate';
import type { Outcome } from '../../../src/core/reason';
import { type BurstReport, locateBurst } from '../../../src/seal/burst';
import type { Scene } from './scene';
import { evenClock, INTERVAL, observeScene, randomScene, reduceScene, viewOf } from './shots';

const report = (outcome: Outcome<BurstReport>): BurstReport => {
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};
const reasonCode = (outcome: Outcome<BurstReport>): string | null =>
  outcome.ok ? null : outcome.reason.code;
const holds = (interval: readonly [number, number], truth: number): boolean =>
  interval[0] <= truth && truth <= interval[1];

describe('burst of many shots', () => {
  const shots = Array.from({ length: 120 }, (_, i) => {
    const scene = randomScene(1000 + i);
    return { scene, found: report(reduceScene(scene)) };
  });

  it('covers the truth and is about as sharp as the frame interval allows', () => {
    const covered = shots.filter(({ scene, found }) => holds(found.burst.interval, scene.burst));
    expect(covered.length / shots.length).toBeGreaterThanOrEqual(0.93);
    const squares = shots.map(
      ({ scene, found }) => ((found.burst.value - scene.burst) / INTERVAL) ** 2,
    );
    const rms = Math.sqrt(squares.reduce((a, b) => a + b, 0) / shots.length);
    expect(rms).toBeLessThanOrEqual(0.3);
  });

  it('states an uncertainty about as large as its errors', () => {
    const squares = shots.map(
      ({ scene, found }) => ((found.burst.value - scene.burst) / found.burst.u) ** 2,
    );
    const ratio = Math.sqrt(squares.reduce((a, b) => a + b, 0) / shots.length);
    expect(ratio).toBeGreaterThan(0.5);
    expect(ratio).toBeLessThan(1.2);
  });

  it('says how probable each moment is: area 1, about the value, no wider than u', () => {
    for (const { found } of shots) {
      const { times, density } = found.posterior;
      const moment = (power: number) =>
        // Simpson's rule is exact for what is linear between the corners times up to a square.
        times.slice(1).reduce((sum, to, i) => {
          const from = times[i] as number;
          const middle = (from + to) / 2;
          const at = (t: number, d: number) => d * (t - found.burst.value) ** power;
          const [d0, d1] = [density[i] as number, density[i + 1] as number];
          const between = at(from, d0) + 4 * at(middle, (d0 + d1) / 2) + at(to, d1);
          return sum + ((to - from) / 6) * between;
        }, 0);
      expect(moment(0)).toBeCloseTo(1, 9);
      // The curve is drawn on steps of a fraction of an interval, its ends that do not matter left out.
      expect(Math.abs(moment(1))).toBeLessThan(0.01 * INTERVAL);
      expect(Math.sqrt(moment(2))).toBeLessThanOrEqual(found.burst.u * 1.01);
      expect(Math.sqrt(moment(2))).toBeGreaterThan(0.9 * found.burst.u);
    }
  });

  it('finds the onset of the bulge with an honest interval', () => {
    const onsets = shots.flatMap(({ scene, found }) =>
      isAvailable(found.bulgeOnset) ? [{ scene, onset: found.bulgeOnset }] : [],
    );
    expect(onsets.length).toBeGreaterThan(0.9 * shots.length);
    const covered = onsets.filter(({ scene, onset }) => holds(onset.interval, scene.onset));
    expect(covered.length / onsets.length).toBeGreaterThanOrEqual(0.9);
  });
});

describe('looks of the shot', () => {
  const tilt = Math.PI / 9;
  const looks: [string, Partial<Scene>][] = [
    ['to the left', { axis: [-1, 0], plane: [87, 37] }],
    ['upwards', { axis: [0, -1], plane: [37, 87], width: 76, height: 110 }],
    [
      'tilted, between pixels',
      { axis: [Math.cos(tilt), Math.sin(tilt)], plane: [24.3, 45.6], width: 120, height: 120 },
    ],
    ['with a light film', { film: 215 }],
    ['with a dark film', { film: 30 }],
    ['without noise', { noise: 0 }],
    ['with half of each interval exposed', { exposure: 0.5 * INTERVAL }],
  ];
  it.each(looks)('finds the burst %s', (_, changes) => {
    for (const seed of [1, 2, 3]) {
      const scene = randomScene(seed, changes);
      const { burst, between } = report(reduceScene(scene));
      expect(Math.abs(burst.value - scene.burst)).toBeLessThan(INTERVAL);
      expect(between[0] * INTERVAL).toBeLessThan(scene.burst + scene.exposure);
      expect(between[1] * INTERVAL).toBeGreaterThan(scene.burst - scene.exposure);
    }
  });

  it('brackets a bulge and burst that pass between two frames', () => {
    const interval = 1 / 240;
    const phases = Array.from({ length: 20 }, (_, i) => (i + 0.5) / 20);
    const held = phases.filter((phase) => {
      const burst = (7 + phase) * interval;
      const scene = randomScene(21, {
        interval,
        exposure: 1e-3,
        onset: burst - 0.12 * interval,
        burst,
        tearing: 0.1 * interval,
        speed: 30 / interval,
        ball: { contact: (9 + phase) * interval, speed: 25 / interval },
        film: 210,
      });
      const found = report(reduceScene(scene));
      expect(found.between[1] - found.between[0]).toBeLessThanOrEqual(2);
      return holds(found.burst.interval, burst);
    });
    // Of 95 % intervals.
    expect(held.length).toBeGreaterThanOrEqual(18);
  });

  it('brackets a burst that comes in the same frame interval as the ball', () => {
    const burst = 8.3 * INTERVAL;
    const scene = randomScene(5, {
      onset: burst - 3 * INTERVAL,
      burst,
      film: 210,
      ball: { contact: 8.7 * INTERVAL, speed: 12 / INTERVAL },
    });
    const found = report(reduceScene(scene));
    expect(found.between).toEqual([8, 9]);
    expect(found.warnings.map((w) => w.code)).toEqual(['burstWithBall']);
  });
});

describe('what cannot be timed', () => {
  it('says that a film only bulged', () => {
    const scene = randomScene(4, {
      onset: 6 * INTERVAL,
      burst: 40 * INTERVAL,
      bulge: 30,
      power: 1,
      ball: null,
    });
    expect(reasonCode(reduceScene(scene))).toBe('burstNotSeen');
  });

  it('says that nothing moves before the ball, or at all', () => {
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      expect(reasonCode(reduceScene(randomScene(seed, { film: null, fragments: 0 })))).toBe(
        'sealNotSeen',
      );
      expect(
        reasonCode(reduceScene(randomScene(seed, { film: null, fragments: 0, ball: null }))),
      ).toBe('sealNotSeen');
    }
  });

  it('says that the film was torn before the clip began', () => {
    const scene = randomScene(6, {
      onset: -4 * INTERVAL,
      burst: -0.8 * INTERVAL,
      speed: 8 / INTERVAL,
      film: 210,
    });
    expect(reasonCode(reduceScene(scene))).toBe('sealOpenFromStart');
  });

  it('says that the ball is through in the first frame', () => {
    expect(reasonCode(reduceScene(randomScene(7), { ballFrameLimit: 0 }))).toBe('sealNotSeen');
  });
});

describe('frames stated by a person', () => {
  const scene = randomScene(9);

  it('are taken as they are', () => {
    const found = report(reduceScene(scene, { burstBetween: [3, 5], exposure: null }));
    expect(found.between).toEqual([3, 5]);
    expect(found.burst.value).toBeCloseTo(4 * INTERVAL, 12);
    // Rectangular over two frame intervals: u = width / sqrt(12) (JCGM 100:2008, 4.3.7).
    expect(found.burst.u).toBeCloseTo((2 * INTERVAL) / Math.sqrt(12), 12);
    expect(found.burst.interval[1] - found.burst.value).toBeCloseTo(0.95 * INTERVAL, 9);
  });

  it('must be frames of the clip in order', () => {
    for (const burstBetween of [
      [5, 5],
      [6, 5],
      [4, 99],
    ] as const) {
      expect(reasonCode(reduceScene(scene, { burstBetween }))).toBe('burstFramesOutside');
    }
  });
});

describe('the clock in the budget', () => {
  it('takes the line the seal is on, and counts rate, time stamps and line time', () => {
    const scene = randomScene(11);
    const lineTime = { value: 2e-6, u: 1e-7 };
    const clock = {
      ...evenClock(INTERVAL),
      timeAt: (frame: number, _x: number, y: number) => frame * INTERVAL + y * lineTime.value,
      lineAt: (_x: number, y: number) => y,
      frameTimeU: 3e-7,
      rateRelativeU: 1e-3,
      lineTime,
    };
    const observations = observeScene(scene);
    const options = {
      coverage: 0.95,
      exposure: { value: scene.exposure, u: 0 },
      burstBetween: null,
      ballFrameLimit: null,
      contact: null,
    };
    const ideal = report(locateBurst(observations, evenClock(INTERVAL), viewOf(scene), options));
    const real = report(locateBurst(observations, clock, viewOf(scene), options));
    expect(real.burst.value - ideal.burst.value).toBeCloseTo(scene.plane[1] * 2e-6, 12);
    const others = [1e-3 * real.burst.value, 3e-7, scene.plane[1] * 1e-7];
    expect(real.burst.u).toBeCloseTo(Math.hypot(ideal.burst.u, ...others), 12);
    const total = Math.hypot(...real.budget.map((e) => e.contribution));
    expect(total).toBeCloseTo(real.burst.u, 12);
    expect(real.burst.interval[1] - real.burst.interval[0]).toBeGreaterThan(
      ideal.burst.interval[1] - ideal.burst.interval[0],
    );
  });
});
