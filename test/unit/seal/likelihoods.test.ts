import { describe, expect, it } from 'vitest';
import { type FlightOfPieces, flightLikelihood } from '../../../src/seal/flightLikelihood';
import { exposed, gatheringLoss, slowingLoss } from '../../../src/seal/growthLaws';
import { DURATIONS, FLYING, type LossSeen, lossLikelihood } from '../../../src/seal/lossLikelihood';
import { motionLikelihood } from '../../../src/seal/motionLikelihood';

const instants = Array.from({ length: 61 }, (_, i) => -0.5 + i * 0.05);
const meanOf = (weights: ArrayLike<number>): number => {
  const sum = Array.from(weights).reduce((a, b) => a + b, 0);
  return instants.reduce((m, t, i) => m + (t * (weights[i] as number)) / sum, 0);
};
const summed = (of: (duration: number) => Float64Array): number[] =>
  DURATIONS.map(of).reduce(
    (all, one) => all.map((w, i) => w + (one[i] as number)),
    [...instants.map(() => 0)],
  );

describe('growth laws', () => {
  it('are the integrals of 1 - (1 - t)^p and of t^p, 1 beyond', () => {
    for (const p of [1, 1.5, 2.2]) {
      for (const [integral, law] of [
        [slowingLoss(p), (t: number) => 1 - (1 - Math.min(1, t)) ** p],
        [gatheringLoss(p), (t: number) => Math.min(1, t) ** p],
      ] as const) {
        for (const end of [0.3, 0.9, 1.7]) {
          const steps = 4000;
          let sum = 0;
          for (let i = 0; i < steps; i++) sum += (law(((i + 0.5) / steps) * end) * end) / steps;
          expect(integral(end)).toBeCloseTo(sum, 5);
        }
        expect(integral(-1)).toBe(0);
      }
    }
  });

  it('are meant over the exposure, its part before the burst counting as nothing', () => {
    expect(exposed(gatheringLoss(1), -0.5, 0.5)).toBeCloseTo(0.125, 12);
    expect(exposed(gatheringLoss(1), 0.2, 0.4)).toBeCloseTo(0.3, 12);
    expect(exposed(gatheringLoss(1), -2, -1)).toBe(0);
  });
});

describe('lossLikelihood', () => {
  /** A film that loses 0.8 of itself evenly within a frame interval of the burst. */
  const losing = (burst: number): LossSeen[] =>
    [0, 1, 2, 3].map((time) => ({
      time,
      since: -1,
      growth: 0,
      share: 0.8 * Math.min(1, Math.max(0, time - burst)),
      u: 0.01,
    }));

  it('follows the burst between the frames', () => {
    const found = [0.2, 0.5, 0.8].map((burst) =>
      meanOf(summed((d) => lossLikelihood(losing(burst), 0.05, instants, 1, FLYING, d))),
    );
    expect(found[0]).toBeLessThan((found[1] as number) - 0.03);
    expect(found[1]).toBeLessThan((found[2] as number) - 0.03);
    found.forEach((mean, i) => {
      expect(Math.abs(mean - (0.2 + 0.3 * i))).toBeLessThan(0.35);
    });
  });

  it('is nearly flat where the losses are not known', () => {
    const vague = losing(0.5).map((loss) => ({ ...loss, u: 50 }));
    const weights = lossLikelihood(vague, 0.05, instants, 1, FLYING, 1);
    expect(Math.max(...weights) / Math.min(...weights)).toBeLessThan(1.01);
  });
});

describe('flightLikelihood', () => {
  const half = 20;
  /** A piece from the film's top, 10 px out, at an even 14 px an interval; it hardly slows. */
  const flying = (burst: number): FlightOfPieces => ({
    seen: [1, 2, 3].map((time) => ({ time, reach: 10 + 14 * (time - burst) })),
    limit: 90,
    whole: { time: 0, reach: 10 },
    speed: 0,
    covered: 0.3,
    exposure: 0.05,
    still: false,
    halfAperture: half,
  });

  it('carries the flight back to where it began', () => {
    for (const burst of [0.2, 0.6]) {
      const mean = meanOf(summed((d) => flightLikelihood(flying(burst), instants, d)));
      expect(Math.abs(mean - burst)).toBeLessThan(0.35);
    }
    const early = meanOf(summed((d) => flightLikelihood(flying(0.2), instants, d)));
    const late = meanOf(summed((d) => flightLikelihood(flying(0.6), instants, d)));
    expect(late - early).toBeGreaterThan(0.2);
  });

  it('reads no way off a piece that is partly out of view', () => {
    const found = (reaches: readonly number[]): number => {
      const seen = reaches.map((reach, i) => ({ time: i + 1, reach }));
      const flight = { ...flying(0.5), limit: 40, seen };
      return meanOf(summed((d) => flightLikelihood(flight, instants, d)));
    };
    // 14 px an interval: 17, 31 and 45 px out, of which 40 are in view.
    expect(Math.abs(found([17, 31, 38.5]) - found([17, 31]))).toBeLessThan(0.05);
  });

  it('never rules a moment out', () => {
    for (const weight of flightLikelihood(flying(0.5), instants, 1))
      expect(weight).toBeGreaterThan(0);
  });
});

describe('motionLikelihood', () => {
  it('speaks against a tear where the film moves on as before, and for one where it stops', () => {
    const at = (ratio: number) => motionLikelihood({ ratio, ratioU: 0.05, time: 1 }, 0.1, instants);
    const torn = instants.findIndex((t) => t > 0.4);
    /** How much likelier the last moment, long after the frame, is than the one that tore before it. */
    const forWhole = (ratio: number): number => {
      const weights = at(ratio);
      return (weights.at(-1) as number) / (weights[torn] as number);
    };
    expect(forWhole(1.05)).toBeGreaterThan(1.5);
    expect(forWhole(-0.5)).toBeLessThan(0.5);
  });

  it('is flat where the step is not known', () => {
    const weights = motionLikelihood({ ratio: 1, ratioU: 30, time: -2 }, 0.1, instants);
    expect(Math.max(...weights)).toBe(Math.min(...weights));
  });
});
