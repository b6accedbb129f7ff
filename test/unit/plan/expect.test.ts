import { describe, expect, it } from 'vitest';
import { buildClock } from '../../../src/clock/clock';
import { type Expectation, expectShot } from '../../../src/plan/expect';
import { layFlight } from '../../../src/plan/flight';
import { metresPerPixel, plannedFilm, plannedShot } from '../../../src/plan/plannedShot';
import { termsOf } from '../../../src/plan/terms';
import { setScene } from '../../../src/reduction/scene';
import type { Plan } from '../../../src/shot/planning';
import { PLAN, planWith } from './plans';

function told(plan: Plan, draws = 4): Expectation {
  const expected = expectShot(plan, draws);
  if (!expected.ok) throw new Error(expected.reason.message);
  return expected.value;
}
const contribution = ({ budget }: Expectation, source: string): number =>
  budget.find((line) => line.source === source)?.contribution ?? 0;

function shotOf(plan: Plan) {
  const shot = plannedShot(plan);
  if (!shot.ok) throw new Error(shot.reason.message);
  return shot.value;
}

/** No air to speak of slows it: the fit is that of a straight line. */
const CANNONBALL = planWith({ ball: { mass: { value: 1e4, u: 1 } } });

describe('a planned shot', () => {
  it('has the frames and the blur of its numbers', () => {
    const { frames, blur, radius } = told(CANNONBALL);
    // From the plane to where 35 % of the outline is left: 0.34 m and 0.454 radii, 13.33 mm a frame.
    const way = 0.34 + 0.015 * Math.cos(0.35 * Math.PI);
    expect(frames[0]).toBeGreaterThanOrEqual(Math.floor(way / (160 / 12_000)));
    expect(frames[1]).toBeLessThanOrEqual(Math.ceil(way / (160 / 12_000)));
    expect(blur).toBeCloseTo((160 * 10e-6) / 0.4e-3, 9);
    expect(radius).toBeCloseTo(37.5, 9);
  });

  it('knows the slope of a straight line as the textbook has it', () => {
    // V(b1) = sigma^2 / sum (t - mean)^2, weighted by 1/sigma^2 (Draper and Smith, Applied Regression Analysis,
    // 3rd ed. 1998, sections 1.4 and 9.2; from memory).
    const shot = shotOf(CANNONBALL);
    const clock = buildClock(shot.timing, plannedFilm(CANNONBALL, 1e6), null);
    if (!clock.ok || shot.muzzle === null) throw new Error('no clock');
    const path = (time: number) => 160 * time;
    const draws = 16;
    const variances = Array.from({ length: draws }, (_, i) => {
      const { frames } = layFlight(
        CANNONBALL,
        { clock: clock.value, muzzle: shot.muzzle as NonNullable<typeof shot.muzzle> },
        path,
        20,
        (i + 0.5) / draws,
      );
      const weights = frames.map(({ alongU }) => 1 / (alongU * metresPerPixel(CANNONBALL)) ** 2);
      const times = frames.map(({ frame }) => frame / 12_000);
      const sum = weights.reduce((a, b) => a + b);
      const middle = times.reduce((a, t, k) => a + t * (weights[k] as number), 0) / sum;
      return 1 / times.reduce((a, t, k) => a + (weights[k] as number) * (t - middle) ** 2, 0);
    });
    const textbook = Math.sqrt(variances.reduce((a, b) => a + b) / draws);
    // The estimator widens what scatters more than stated, by chance a few per cent; never narrows.
    const ratio = contribution(told(CANNONBALL, draws), 'ball centres') / textbook;
    expect(ratio).toBeGreaterThan(0.999);
    expect(ratio).toBeLessThan(1.1);
  });

  it('has scale and clock in its budget by their formulas', () => {
    const expected = told(PLAN);
    expect(contribution(expected, 'depth of the known length')).toBeCloseTo(160 * (0.002 / 1.2), 2);
    expect(contribution(expected, 'ends of the known length')).toBeCloseTo(
      (160 * Math.SQRT2 * 0.3 * 0.4e-3) / 0.2,
      2,
    );
    expect(contribution(expected, 'known length')).toBeCloseTo((160 * 5e-5) / 0.2, 2);
    expect(contribution(expected, 'recording rate')).toBeCloseTo((160 * 0.6) / 12_000, 3);
  });

  it('sums up its budget by origin, the largest first', () => {
    const { terms, speedU, speedURange, budget } = told(PLAN, 8);
    expect(Math.hypot(...terms.map(({ u }) => u))).toBeCloseTo(speedU, 9);
    expect(terms.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(terms.map(({ share }) => share)).toEqual(
      terms.map(({ share }) => share).sort((a, b) => b - a),
    );
    expect(speedU).toBeGreaterThan(speedURange[0]);
    expect(speedU).toBeLessThan(speedURange[1]);
    expect(termsOf(budget)).toEqual(terms);
  });

  it('times the burst to within a frame, anywhere in it', () => {
    // A rectangular distribution a frame wide: width / sqrt(12) (JCGM 100:2008, 4.3.7).
    const { burstU, leadU, exitTimeU } = told(PLAN);
    expect(burstU).toBeCloseTo(1 / 12_000 / Math.sqrt(12), 12);
    expect(leadU).toBeCloseTo(Math.hypot(burstU, exitTimeU), 12);
  });

  it('is the same each time, and better with more light', () => {
    expect(told(PLAN)).toEqual(told(PLAN));
    const light = { kind: 'contrast', contrastToNoise: 5, exposure: 10e-6, factor: 1 } as const;
    expect(told(planWith({ picture: { light } })).speedU).toBeGreaterThan(told(PLAN).speedU);
  });

  it('says why nothing can be expected', () => {
    const slow = expectShot(planWith({ camera: { rate: { value: 700, u: 0.1 } } }), 4);
    expect(slow.ok ? '' : slow.reason.code).toBe('planTooFewFrames');
    const tiny = expectShot(planWith({ camera: { width: 60 } }), 4);
    expect(tiny.ok ? '' : tiny.reason.code).toBe('ballTooSmall');
    const long = expectShot(planWith({ camera: { exposure: { value: 1e-3, u: 0 } } }), 4);
    expect(long.ok ? '' : long.reason.code).toBe('invalidShot');
  });

  it('allows for lines read along the flight', () => {
    const readout = (direction: 'right' | 'left') =>
      planWith({ camera: { readout: { direction, lineTime: { value: 5e-8, u: 1e-9 } } } });
    // Every line waited for stretches a frame by the ball's speed in lines, 160 m/s over 0.4 mm: u(v)/v = that times u.
    for (const direction of ['right', 'left'] as const) {
      const u = contribution(told(readout(direction)), 'time per line');
      expect(u / (160 * (160 / 0.4e-3) * 1e-9)).toBeCloseTo(1, 1);
    }
  });

  it('stands for very many frames by some of them', () => {
    const many = planWith({
      camera: { rate: { value: 480_000, u: 24 }, exposure: { value: 1e-6, u: 0 } },
    });
    const fewer = planWith({
      camera: { rate: { value: 240_000, u: 12 }, exposure: { value: 1e-6, u: 0 } },
    });
    const [a, b] = [told(many, 2), told(fewer, 2)];
    expect(a.frames[0] / b.frames[0]).toBeCloseTo(2, 1);
    expect(a.speedU).toBeLessThan(1.02 * b.speedU);
  });
});

describe('the shot file of a plan', () => {
  it('has the scale and the muzzle that the plan has', () => {
    for (const depth of [0, 0.05]) {
      const plan = planWith({ scale: { depthOffset: { value: depth, u: 0.002 } } });
      const scene = setScene({
        ...{ shot: shotOf(plan), info: plannedFilm(plan, 100), timestamps: null },
        ...{ footageSha256: null, audio: null },
      });
      expect(scene.scale.value).toBeCloseTo(0.4e-3, 12);
      expect(scene.muzzle.point[0]).toBeCloseTo(0.06 / 0.4e-3 - 0.5, 9);
      expect(scene.ballRadius).toBeCloseTo(37.5, 9);
    }
  });
});
