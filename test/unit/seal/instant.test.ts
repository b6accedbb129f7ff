import { describe, expect, it } from 'vitest';
import { intervalOf, momentsOf } from '../../../src/seal/density';
import { burstDensity, type Surroundings } from '../../../src/seal/instant';
import type { SealObservation } from '../../../src/seal/types';
import { INTERVAL, observeScene, randomScene, viewOf } from './shots';

const COLUMNS = 40;
const ROWS = 40;
const STRENGTH = 60;

/** A film that stands out evenly by `height` over a share of the rows; pixels reach half a px to each side. */
function film(frame: number, height: number, share = 1, strength = STRENGTH): SealObservation {
  const change = new Float32Array(COLUMNS * ROWS);
  for (let row = 0; row < share * ROWS; row++) {
    for (let c = 0; c < COLUMNS; c++) {
      change[row * COLUMNS + c] =
        strength * Math.max(0, Math.min(c + 0.5, height) - Math.max(c - 0.5, 0));
    }
  }
  const picture = { columns: COLUMNS, rows: ROWS, cell: 1, change, noise: 1, least: 2 };
  const front = share > 0 ? height : 0;
  const looks = { roughness: 0, opening: 0, pieces: 1, changedArea: share * ROWS * height };
  return { frame, front, frontU: 0.05, reach: front, ...looks, picture };
}

/** Film that came off and flies: all that is seen ends `reach` px out. */
function piece(frame: number, reach: number): SealObservation {
  const seen = film(frame, reach, 0.3);
  const { change } = seen.picture;
  for (let at = 0; at < change.length; at++) if (at % COLUMNS < reach - 6) change[at] = 0;
  return { ...seen, front: 0, pieces: 2 };
}

/** Six frames of even growth by a pixel, then frames that show these shares of the film. */
function around(shares: readonly number[], changes: Partial<Surroundings> = {}): Surroundings {
  const observations = [
    ...[3, 4, 5, 6, 7, 8].map((height, i) => film(i, height)),
    ...shares.map((share, i) => film(6 + i, 8, share)),
  ];
  return {
    ...{ observations, times: observations.map((_, i) => i - 5), open: 6, surely: 6 },
    ...{ exposure: 0.02, still: false, latest: null, halfAperture: 20, ...changes },
  };
}

function densityOf(surroundings: Surroundings) {
  const density = burstDensity(surroundings);
  if (density === null) throw new Error('no density');
  return density;
}

describe('burstDensity', () => {
  it('lays the burst of a film that is gone in the next frame between the two', () => {
    const { mean, sd } = momentsOf(densityOf(around([0, 0, 0])));
    expect(mean).toBeGreaterThan(0);
    expect(mean).toBeLessThan(1);
    // No surer than frames allow that only tell on which side of them it lies, by much: 1 / sqrt(12).
    expect(sd).toBeGreaterThan(0.5 / Math.sqrt(12));
  });

  it('is the earlier the more of the film the first open frame has lost', () => {
    const mean = (first: number) => momentsOf(densityOf(around([first, 0, 0]))).mean;
    expect(mean(0.2)).toBeLessThan(mean(0.5));
    expect(mean(0.5)).toBeLessThan(mean(0.9));
  });

  it('moves with the clock', () => {
    const now = densityOf(around([0.5, 0, 0]));
    const shares = around([0.5, 0, 0]);
    const later = densityOf({ ...shares, times: shares.times.map((t) => t + 7) });
    now.times.forEach((time, i) => {
      expect(later.times[i]).toBeCloseTo(time + 7, 9);
      expect(later.weights[i]).toBeCloseTo(now.weights[i] as number, 6);
    });
  });

  it('knows no moment after the one the ball is through', () => {
    const { times } = densityOf(around([0, 0, 0], { latest: 0.4 }));
    expect(times.at(-1)).toBeCloseTo(0.4, 9);
  });

  it('knows no moment before a film at rest was seen, for it bulges first', () => {
    const { times } = densityOf(around([0.5, 0, 0], { still: true }));
    expect(times[0]).toBeGreaterThan(-0.01 - 0.05);
  });

  it('takes a film that bulged on for whole, though it shows more than before', () => {
    const grown = around([0, 0, 0]);
    const mean = (strength: number) => {
      const observations = grown.observations.map((o, i) =>
        i === 6 ? film(6, 9, 1, strength) : o,
      );
      return momentsOf(densityOf({ ...grown, observations, surely: 7 })).mean;
    };
    expect(mean(1.2 * STRENGTH)).toBeCloseTo(mean(STRENGTH), 1);
  });

  it('does not take a flap that turns on its hinge for a piece that air slows', () => {
    const at = (reaches: readonly number[]) => {
      const observations = [
        ...[3, 4, 5, 6, 7, 8].map((height, i) => film(i, height)),
        ...reaches.map((reach, i) => piece(6 + i, reach)),
      ];
      return momentsOf(densityOf({ ...around([0, 0, 0]), observations })).mean;
    };
    // The third reach alone differs: what hangs comes to a stop there.
    expect(at([16, 26, 27])).toBeCloseTo(at([16, 26]), 1);
  });

  it('says nothing of a film that does not stand out', () => {
    const observations = around([0]).observations.map((o) => film(o.frame, 8, 1, 0.5));
    expect(burstDensity(around([0], { observations }))).toBeNull();
  });

  it('holds the burst of drawn films', () => {
    const held = Array.from({ length: 12 }, (_, i) => {
      const scene = randomScene(400 + i, { ball: null, film: 220, noise: 1 });
      const burst = scene.burst / INTERVAL;
      const open = Math.ceil(burst);
      const density = densityOf({
        observations: observeScene(scene),
        times: Array.from({ length: scene.frames }, (_unused, frame) => frame),
        ...{ open, surely: open, exposure: scene.exposure / INTERVAL, latest: null },
        ...{ still: false, halfAperture: viewOf(scene).halfAperture },
      });
      const [low, high] = intervalOf(density, 0.95);
      return low <= burst && burst <= high;
    });
    // By chance fewer than 9 of 12 would be held once in 5000 times where 95 % are (binomial).
    expect(held.filter(Boolean).length).toBeGreaterThanOrEqual(9);
  });
});
