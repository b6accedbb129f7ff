import { describe, expect, it } from 'vitest';
import { burstBounds } from '../../../src/seal/bounds';
import { evenClock, INTERVAL, observeScene, randomScene, viewOf } from './shots';

describe('burstBounds', () => {
  const scene = randomScene(3);
  const observations = observeScene(scene);
  const clock = evenClock(INTERVAL);
  const view = viewOf(scene);
  const through = scene.ball?.contact ?? null;

  it('hold the burst: after the last frame at rest, before the ball is through', () => {
    const [earliest, latest] = burstBounds(observations, through, clock, view);
    expect(earliest).not.toBeNull();
    expect(earliest ?? Number.NaN).toBeLessThan(scene.burst);
    expect(earliest ?? Number.NaN).toBeGreaterThan(scene.onset - INTERVAL);
    expect(latest).toBe(through);
  });

  it('leave open what nothing bounds', () => {
    expect(burstBounds(observations, null, clock, view)[1]).toBeNull();
    expect(burstBounds([], 0.5, clock, view)).toEqual([null, 0.5]);
    const still = observations.slice(0, 4);
    expect(burstBounds(still, null, clock, view)).toEqual([null, null]);
  });
});
