import { describe, expect, it } from 'vitest';
import { pictureAt } from '../../../src/plan/camera';
import { blockingCheck, checkPlan } from '../../../src/plan/checks';
import { lightingAt } from '../../../src/plan/light';
import type { CameraTrade, Light, Plan } from '../../../src/shot/planning';
import { PLAN, planWith } from './plans';

describe('the light of a plan', () => {
  const contrast: Light = { kind: 'contrast', contrastToNoise: 20, exposure: 40e-6, factor: 1 };

  it('is short by as much as the exposure shrinks', () => {
    expect(lightingAt(contrast, 10e-6)).toMatchObject({ needed: 4, exposed: 0.25 });
    const lit = lightingAt({ ...contrast, factor: 4 }, 10e-6);
    expect(lit).toMatchObject({ needed: 4, exposed: 1, contrastToNoise: 20 });
  });

  it('takes the worse of what noise can do', () => {
    expect(lightingAt(contrast, 10e-6).contrastToNoise).toBeCloseTo(5, 12);
    expect(lightingAt(contrast, 160e-6).contrastToNoise).toBeCloseTo(40, 12);
  });

  it('counts electrons', () => {
    const sensor: Light = {
      ...{ kind: 'sensor', exposure: 20e-6, factor: 1, fullWell: 10_000, readNoise: 30 },
      ...{ ball: 0.7, background: 0.1, bitDepth: 8 },
    };
    // 6000 electrons of contrast; 4000 at the edge, read noise 30, rounding 10000/255/sqrt(12).
    const noise = Math.sqrt(4000 + 900 + (10_000 / 255) ** 2 / 12);
    expect(lightingAt(sensor, 20e-6).contrastToNoise).toBeCloseTo(6000 / noise, 9);
    expect(lightingAt(sensor, 40e-6).brightest).toBeCloseTo(1.4, 12);
  });
});

describe('the checks of a plan', () => {
  const codes = (plan: Plan) => checkPlan(plan).map(({ code }) => code);

  it('find nothing where nothing is wrong', () => {
    expect(codes(PLAN)).toEqual([]);
    expect(blockingCheck(PLAN)).toBeNull();
  });

  const lit = (light: Partial<Light>) =>
    planWith({ picture: { light: { ...PLAN.picture.light, ...light } as Light } });
  it.each<[string, boolean, Plan]>([
    ['planMuzzleOutside', true, planWith({ view: { beforeMuzzle: 0.5 } })],
    ['planBallTooLarge', true, planWith({ view: { across: 0.08 } })],
    ['planBallTooLarge', true, planWith({ camera: { height: 64 } })],
    ['planBallTooSmall', true, planWith({ camera: { width: 70 } })],
    ['planBallSmall', false, planWith({ camera: { width: 140 } })],
    ['planInsideMuzzleZone', false, planWith({ view: { across: 0.14 } })],
    ['planExposureTooLong', true, planWith({ camera: { exposure: { value: 1e-4, u: 0 } } })],
    [
      'planReadoutTooLong',
      true,
      planWith({ camera: { readout: { direction: 'up', lineTime: { value: 1e-6, u: 0 } } } }),
    ],
    ['planTooFast', false, planWith({ camera: { rate: { value: 1200, u: 0 } } })],
    ['planTooFast', true, planWith({ camera: { rate: { value: 400, u: 0 } } })],
    ['planFewFrames', false, planWith({ camera: { rate: { value: 2000, u: 0 } } })],
    ['planLongBlur', false, planWith({ speed: { value: 1700, u: 0 } })],
    ['planNoContrast', true, lit({ exposure: 100e-6 })],
    ['planLowContrast', false, lit({ exposure: 50e-6 })],
    ['planTooDark', false, lit({ exposure: 20e-6 })],
    ['planTooBright', false, lit({ factor: 2 })],
    ['planLengthOutOfView', false, planWith({ scale: { length: { value: 0.5, u: 1e-4 } } })],
    ['planParallaxUnknown', false, planWith({ scale: { cameraDistance: null } })],
  ])('tell %s (blocks: %s) and what to do', (code, blocks, plan) => {
    const found = checkPlan(plan).find((one) => one.code === code);
    expect(found?.blocks).toBe(blocks);
    expect(found?.remedy.length).toBeGreaterThan(10);
    if (blocks) expect(blockingCheck(plan)?.blocks).toBe(true);
  });

  it('look at a ball two standard uncertainties faster than expected', () => {
    const rate = { value: 2600, u: 0 };
    expect(codes(planWith({ camera: { rate } }))).toEqual([]);
    expect(codes(planWith({ camera: { rate }, speed: { value: 160, u: 20 } }))).toEqual([
      'planFewFrames',
    ]);
  });
});

describe('the picture a camera takes', () => {
  const trade: CameraTrade = {
    ...{ kind: 'pixelRate', pixelsPerSecond: 3e9, mostWidth: 1280, mostHeight: 800 },
  };

  it('keeps to the pixel rate, rows given up before width', () => {
    const sizes = [2000, 4000, 20_000, 100_000].map((rate) => {
      const picture = pictureAt(trade, rate, 0.4, 0.03);
      if (!picture.ok) throw new Error(picture.reason.message);
      const { width, height } = picture.value;
      expect(width * height * rate).toBeLessThanOrEqual(3e9);
      // Three ball diameters fit in, but for a step of the picture's size.
      expect(height + 8).toBeGreaterThanOrEqual((3 * 0.03 * width) / 0.4 - 8);
      return [width, height];
    });
    expect(sizes[0]).toEqual([1280, 800]);
    expect(sizes[1]).toEqual([1280, 584]);
    expect(sizes[3]?.[0]).toBeLessThan(1280);
  });

  it('is the widest mode that is fast enough', () => {
    const modes = [
      { rate: 5000, width: 1024, height: 512 },
      { rate: 10_000, width: 1024, height: 256 },
      { rate: 40_000, width: 256, height: 128 },
    ];
    const at = (rate: number) => pictureAt({ kind: 'modes', modes }, rate, 0.4, 0.03);
    expect(at(8000)).toEqual({ ok: true, value: { width: 1024, height: 256 } });
    expect(at(20_000)).toEqual({ ok: true, value: { width: 256, height: 128 } });
    const beyond = at(50_000);
    expect(beyond.ok ? '' : beyond.reason.code).toBe('cameraTooSlow');
  });
});
