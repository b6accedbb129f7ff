import { describe, expect, it } from 'vitest';
import { isAvailable, type Quantity } from '../../../src/core/estimate';
import { reduceShot } from '../../../src/reduction/reduceShot';
import type { FrameMeasurer } from '../../../src/reduction/types';
import type { SealBurst } from '../../../src/shot/result';
import { observeScene, randomScene } from '../seal/shots';
import { film, going, inputs, RATE, type Script, scriptedMeasurer, slowing } from './scriptedFilm';

/** The ball's centre passes the muzzle in this frame; it flies 12 px a frame and has a radius of 12 px. */
const EXIT = 20;
const flight: Script = { at: slowing(12, EXIT) };
/** The muzzle's seal opens three frames before, the rear one, far back in the tube, long before that. */
const MUZZLE_BURST = 16.7;
const REAR_BURST = 8.5;

/** A drawn seal that opens at a moment, frames; no ball in its picture. */
function seal(burst: number, seed: number) {
  const interval = 1 / RATE;
  const scene = randomScene(seed, {
    ...{ interval, burst: burst * interval, onset: (burst - 3) * interval, frames: 40 },
    ...{ exposure: 0.1 * interval, speed: 9 * RATE, tearing: interval, ball: null, noise: 1 },
    ...{ ballRadius: 14, bulge: 8, film: 220 },
  });
  return observeScene(scene);
}
const muzzleSeal = seal(MUZZLE_BURST, 11);
const rearSeal = seal(REAR_BURST, 12);

/** The scripted ball with drawn seals beside it. */
function measurer(script: Script): FrameMeasurer {
  const bare = scriptedMeasurer(script);
  return {
    ...bare,
    survey: async (...given) =>
      (await bare.survey(...given)).map((one) => ({
        ...one,
        seal: muzzleSeal[one.frame] ?? null,
        rear: rearSeal[one.frame] ?? null,
      })),
  };
}
const reduce = async (seals: object | null, script = flight) => {
  const { result } = await reduceShot(
    inputs({ seals }),
    film,
    measurer(script),
    () => undefined,
    going,
  );
  return result;
};
const known = (burst: SealBurst | null): SealBurst & Quantity => {
  if (burst === null || !isAvailable(burst)) throw new Error('not found');
  return burst;
};
const plane = (x: number) => ({ plane: { point: [x, 30], u: 1 } });
const holds = ({ interval }: Quantity, truth: number): boolean =>
  interval[0] <= truth && truth <= interval[1];

describe('burst of a rear seal', () => {
  it('is timed like that of the muzzle, each by itself', async () => {
    const result = await reduce({ muzzle: {}, rear: plane(20) });
    expect(holds(known(result.rearBurst), REAR_BURST / RATE)).toBe(true);
    expect(holds(known(result.sealBurst), MUZZLE_BURST / RATE)).toBe(true);
    if (!isAvailable(result.lead)) throw new Error('no lead');
    expect(holds(result.lead, (EXIT - MUZZLE_BURST) / RATE)).toBe(true);
  });

  it('does not need one at the muzzle, and gives no lead then', async () => {
    const result = await reduce({ muzzle: null, rear: plane(20) });
    expect(holds(known(result.rearBurst), REAR_BURST / RATE)).toBe(true);
    expect(result.sealBurst).toMatchObject({ unavailable: { code: 'noSealInView' } });
    expect(result.lead).toMatchObject({ unavailable: { code: 'noSealInView' } });
  });

  it('is not looked for where none is stated', async () => {
    expect((await reduce({ muzzle: {} })).rearBurst).toBeNull();
  });

  it('asks for its plane', async () => {
    const { rearBurst } = await reduce({ muzzle: {}, rear: {} });
    expect(rearBurst).toMatchObject({ unavailable: { code: 'rearSealPlaneMissing' } });
  });
});

describe('events that cannot be told', () => {
  it('says that frames stated by hand are not in the clip, and gives no lead', async () => {
    for (const burstBetween of [
      [60, 61],
      [18, 60],
    ]) {
      const result = await reduce({ muzzle: { burstBetween } });
      expect(result.sealBurst).toMatchObject({ unavailable: { code: 'burstFramesOutside' } });
      expect(result.lead).toMatchObject({ unavailable: { code: 'burstFramesOutside' } });
      expect(result.contactLead).toMatchObject({ unavailable: { code: 'burstFramesOutside' } });
      expect(isAvailable(result.contact)).toBe(true);
      expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
    }
  });

  it('gives no lead without a ball, but the burst', async () => {
    const result = await reduce({ muzzle: {}, rear: plane(20) }, { at: () => null });
    expect(isAvailable(result.exitTime)).toBe(false);
    expect(isAvailable(result.contact)).toBe(false);
    expect(isAvailable(result.lead)).toBe(false);
    expect(result.burstExitCorrelation).toBeNull();
    expect(holds(known(result.sealBurst), MUZZLE_BURST / RATE)).toBe(true);
    expect(holds(known(result.rearBurst), REAR_BURST / RATE)).toBe(true);
    expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
  });

  it('says that the ball was through before the film of the seal began', async () => {
    const result = await reduce({ muzzle: {} }, { at: slowing(12, -1.5) });
    expect(result.sealBurst).toMatchObject({ unavailable: { code: 'sealNotSeen' } });
    expect(result.lead).toMatchObject({ unavailable: { code: 'sealNotSeen' } });
  });
});
