import { describe, expect, it } from 'vitest';
import { launcherOf } from '../../../src/launch/fromShot';
import { validateShot } from '../../../src/shot/parse';
import { exampleShot } from '../../fixtures/shot';

const LAUNCHER = {
  boreDiameter: { value: 0.031, u: 5e-5 },
  barrelLength: { value: 1.4, u: 1e-3 },
  residualPressure: { value: 1000, u: 100 },
  sealBurstPressure: { value: 5000, u: 1000 },
};

function stated(launcher: object | null) {
  const shot = validateShot({ ...exampleShot(), launcher });
  if (!shot.ok) throw new Error(shot.reason.message);
  return launcherOf(shot.value);
}

describe('the launcher of a shot', () => {
  it('takes ball and air along, each number with its uncertainty', () => {
    const found = stated({ ...LAUNCHER, startPosition: { value: 0.02, u: 0.002 } });
    const { ball, air } = exampleShot();
    expect(found).toEqual({
      ok: true,
      value: {
        launcher: {
          ...{ boreDiameter: 0.031, barrelLength: 1.4, startPosition: 0.02 },
          ...{ residualPressure: 1000, sealBurstPressure: 5000 },
          ...{ ballDiameter: ball.diameter.value, ballMass: ball.mass.value },
          ...{ gapDischarge: 0.7, entranceLoss: 0.5, wallFriction: 0.02, ballFriction: 0 },
          air: {
            temperature: air.temperature.value,
            pressure: air.pressure.value,
            humidity: air.humidity.value,
          },
          outsidePressure: air.pressure.value,
        },
        uncertainty: {
          ...{ boreDiameter: 5e-5, barrelLength: 1e-3, startPosition: 0.002 },
          ...{ residualPressure: 100, sealBurstPressure: 1000 },
          ...{ ballDiameter: ball.diameter.u, ballMass: ball.mass.u },
          ...{ gapDischarge: 0.15, entranceLoss: 0.2, wallFriction: 0.005, ballFriction: 0 },
          airTemperature: air.temperature.u,
          airPressure: air.pressure.u,
          airHumidity: air.humidity.u,
        },
      },
    });
  });

  it('lays a ball of unknown start a millimetre from the rear seal', () => {
    const found = stated(LAUNCHER);
    expect(found.ok && found.value.launcher.startPosition).toBeCloseTo(0.016, 12);
    expect(found.ok && found.value.uncertainty.startPosition).toBe(5e-4);
  });

  it.each([
    [null, 'noLauncher'],
    [{ ...LAUNCHER, residualPressure: null }, 'noResidualPressure'],
    [{ ...LAUNCHER, sealBurstPressure: null }, 'noSealBurstPressure'],
  ])('says what is missing of %j', (launcher, code) => {
    const found = stated(launcher);
    expect(found).toMatchObject({ ok: false, reason: { code, remedy: expect.any(String) } });
  });
});
