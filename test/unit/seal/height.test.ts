import { describe, expect, it } from 'vitest';
import { heightsOf } from '../../../src/seal/height';
import type { SealObservation } from '../../../src/seal/types';

const COLUMNS = 30;
const ROWS = 40;
/** Change of the grey values where the film covers a pixel whole. */
const STRENGTH = 60;

/** Share of pixel c, which reaches from c - 0.5 to c + 0.5 px, that lies between two heights. */
const covered = (c: number, from: number, to: number): number =>
  Math.max(0, Math.min(c + 0.5, to) - Math.max(c - 0.5, from));

/** A film that stands out evenly by `height`, of which a rim hides what is lower than `hidden`; without noise. */
function film(frame: number, height: number, { hidden = 0, strength = STRENGTH, noise = 1 } = {}) {
  const change = Float32Array.from(
    { length: COLUMNS * ROWS },
    (_, at) => strength * covered(at % COLUMNS, hidden, height),
  );
  const front = height > hidden ? height : 0;
  const picture = { columns: COLUMNS, rows: ROWS, cell: 1, change, noise, least: 2 };
  const looks = { reach: front, roughness: 0, opening: 0, pieces: 1, changedArea: ROWS * front };
  return { frame, front, frontU: 0.05, ...looks, picture } satisfies SealObservation;
}

const GROWTH = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0.5, 0.9, 1.6, 2.5, 4.2, 7, 11];
const shot = (how: Parameters<typeof film>[2] = {}): SealObservation[] =>
  GROWTH.map((height, frame) => film(frame, height, how));

describe('heightsOf', () => {
  it('reads a film of known height, below a pixel too', () => {
    for (const reading of heightsOf(shot())) {
      reading.forEach(({ height, u, seen }, i) => {
        const truth = GROWTH[i] as number;
        expect(seen).toBe(truth > 0);
        expect(Math.abs(height - truth)).toBeLessThan(Math.max(u, 0.02));
      });
    }
  });

  it('takes the light of the film, lighter or darker than the scene, for one', () => {
    const [light] = heightsOf(shot());
    const [dark] = heightsOf(shot({ strength: -STRENGTH }));
    light?.forEach(({ height }, i) => {
      expect(dark?.[i]?.height).toBeCloseTo(height, 5);
    });
  });

  it('adds what the rim of the ring hides', () => {
    for (const reading of heightsOf(shot({ hidden: 2 }))) {
      reading.forEach(({ height, u, seen }, i) => {
        const truth = GROWTH[i] as number;
        expect(seen).toBe(truth > 2);
        // Not in view: no higher than the rim.
        if (!seen) expect(height).toBeGreaterThanOrEqual(Math.min(truth, 2) - 0.02);
        else expect(Math.abs(height - truth)).toBeLessThan(Math.max(2 * u, 0.05));
      });
    }
  });

  it('is less sure of it the more noise there is', () => {
    const first = (noise: number) => heightsOf(shot({ noise }))[0]?.[9]?.u ?? 0;
    expect(first(8)).toBeGreaterThan(first(1));
  });

  it('reads nothing off a film that does not stand out, nor off no frames', () => {
    expect(heightsOf(shot({ strength: 1 }))).toEqual([]);
    expect(heightsOf([])).toEqual([]);
  });
});
