import { describe, expect, it } from 'vitest';
import { isAvailable } from '../../../src/core/estimate';
import { seededRandom } from '../../../src/core/random';
import { type Outcome, success } from '../../../src/core/reason';
import type { CentreMeasurement, Surface } from '../../../src/image/types';
import { reduceShot } from '../../../src/reduction/reduceShot';
import type { FrameMeasurer } from '../../../src/reduction/types';
import { film, going, inputs, RATE, recorder, scriptedMeasurer, slowing } from './scriptedFilm';

/** Pixels a frame at the muzzle, and metres a pixel: 100 m/s. */
const SPEED = 8;
const EXPOSURE = 5e-5;

/** The scripted film's centres with more about each. */
function centresWith(more: (frame: number) => Partial<CentreMeasurement>): FrameMeasurer {
  const plain = scriptedMeasurer({ at: slowing(SPEED, 5.3) });
  return {
    ...plain,
    centres: async (hints) => {
      const frames = hints.map(({ frame }) => frame.index);
      const found = await plain.centres(hints);
      return found.map(
        (centre, i): Outcome<CentreMeasurement> =>
          centre.ok ? success({ ...centre.value, ...more(frames[i] ?? 0) }) : centre,
      );
    },
  };
}

async function reduced(measurer: FrameMeasurer, exposure: { value: number; u: number } | null) {
  const timing = {
    source: 'recordingRate',
    recordingRate: { value: RATE, u: 0.5 },
    exposure,
  };
  const { onEvent } = recorder();
  return (
    await reduceShot(
      inputs({ timing, fit: { model: 'uniform', robust: true } }),
      film,
      measurer,
      onEvent,
      going,
    )
  ).result;
}

describe('speed from the blur in a result', () => {
  // The expected blur is that of the track's own speed: a stretch of 1 is the fitted speed.
  const blurred = (stretch: number) =>
    centresWith((frame) => ({
      blur: { stretch: stretch + 0.02 * seededRandom(3, frame).normal(), u: 0.02 },
    }));

  it('agrees with the fit where exposure and rate are right', async () => {
    const { streak, warnings } = await reduced(blurred(1), { value: EXPOSURE, u: 0.02 * EXPOSURE });
    if (!('speed' in streak)) throw new Error(streak.unavailable.message);
    expect(streak.agrees).toBe(true);
    expect(streak.frames).toBeGreaterThan(10);
    expect(streak.speed.value / 100).toBeCloseTo(0.98, 1);
    expect(warnings.map(({ code }) => code)).not.toContain('streakDisagrees');
  });

  it('warns where the stated rate cannot be that of the film', async () => {
    const { streak, warnings } = await reduced(blurred(0.5), {
      value: EXPOSURE,
      u: 0.02 * EXPOSURE,
    });
    if (!('speed' in streak)) throw new Error(streak.unavailable.message);
    expect(streak.agrees).toBe(false);
    expect(warnings.map(({ code }) => code)).toContain('streakDisagrees');
  });

  it.each([
    ['no exposure', blurred(1), null, 'exposureUnknown'],
    ['no blur told', centresWith(() => ({})), { value: EXPOSURE, u: 1e-6 }, 'tooFewBlurred'],
    [
      'the blur lost in noise',
      centresWith(() => ({ blur: { stretch: 1, u: 2 } })),
      { value: EXPOSURE, u: 1e-6 },
      'blurTooShort',
    ],
  ])('gives the reason: %s', async (_name, measurer, exposure, code) => {
    const { streak } = await reduced(measurer, exposure);
    expect('unavailable' in streak && streak.unavailable.code).toBe(code);
  });
});

/** A dark spot a quarter of the contrast deep, at this angle; noise of one grey value. */
function spotAt(angle: number, frame: number): Surface {
  const radii = [0.3, 0.5, 0.7, 0.86];
  const angles = 32;
  const random = seededRandom(11, frame);
  const residual = Float32Array.from({ length: radii.length * angles }, (_, i) => {
    const r = radii[Math.floor(i / angles)] ?? 0;
    const a = (2 * Math.PI * (i % angles)) / angles - angle;
    const off = Math.hypot(r * Math.cos(a) - 0.55, r * Math.sin(a));
    return -40 * Math.exp(-0.5 * (off / 0.2) ** 2) + random.normal();
  });
  return { radii, angles, residual, variance: new Float32Array(residual.length).fill(1) };
}

describe('spin in a result', () => {
  const turning = (rate: number, contrast = 100) =>
    centresWith((frame) => ({ contrast, surface: spotAt((rate * frame) / RATE, frame) }));
  const short = { value: 1e-6, u: 1e-8 };

  it.each([2000, -700, 0])('of a marked ball at %d rad/s', async (rate) => {
    const { spin, warnings } = await reduced(turning(rate), short);
    if (!isAvailable(spin)) throw new Error(spin.unavailable.message);
    expect(Math.abs(spin.value - rate)).toBeLessThan(2.5 * spin.u);
    expect(spin.u).toBeLessThan(10 + 0.2 * Math.abs(rate));
    // A ball at 100 m/s turns at up to 6700 rad/s; the next rate that gives these frames is 62 800 away.
    expect(warnings.map(({ code }) => code)).not.toContain('spinAmbiguous');
  });

  it('is refused where the exposure smears the mark', async () => {
    const { spin } = await reduced(turning(2000), { value: 8e-5, u: 1e-6 });
    expect(isAvailable(spin) || spin.unavailable.code).toBe('markSmeared');
  });

  it('is refused where faces were not looked at', async () => {
    const { spin } = await reduced(
      centresWith(() => ({})),
      short,
    );
    expect(isAvailable(spin) || spin.unavailable.code).toBe('fewFaces');
  });
});
