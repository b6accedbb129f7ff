import { describe, expect, it } from 'vitest';
import { moistAir } from '../../../sample-clips/render/gas/ends';
import { type RealLauncher, solveShot } from '../../../sample-clips/render/gas/solve';
import { launchByGasDynamics } from '../../../src/launch/gasDynamics';
import { LAUNCHER_B } from '../../validate/model/launchers';

const AIR = { temperature: 293.15, pressure: 101_325, humidity: 0.5 };

/** The same shot by the gas dynamics of the tool. */
function byTool(real: RealLauncher, cells: number) {
  const { exit } = launchByGasDynamics(
    {
      ...LAUNCHER_B,
      ...{ boreDiameter: real.bore, barrelLength: real.length, startPosition: real.start },
      ...{ ballDiameter: real.ball, ballMass: real.mass },
      ...{ residualPressure: real.residual, sealBurstPressure: real.burst },
      ...{ gapDischarge: real.discharge, entranceLoss: real.entranceLoss },
      ...{ wallFriction: real.friction, ballFriction: 0 },
      ...{ air: AIR, outsidePressure: AIR.pressure },
    },
    { cells },
  );
  if (!exit.ok) throw new Error(exit.reason.message);
  return exit.value;
}

const SHOT: RealLauncher = {
  ...{ bore: 0.031, length: 0.8, ball: 0.03, mass: 0.0019, start: 0.016 },
  ...{ residual: 300, burst: 110_000, discharge: 0.7, entranceLoss: 0.5, friction: 0.02 },
  room: moistAir(AIR.temperature, AIR.pressure, AIR.humidity),
};

describe('the gas dynamics of the renderer, written apart from the tool by another scheme', () => {
  it.each([
    ['with leak, loss and friction', {}],
    ['a tight ball without losses', { discharge: 0, entranceLoss: 0, friction: 0 }],
    ['a seal that the ball tears', { discharge: 0, residual: 30, burst: 400_000 }],
  ])('%s: exit speed, time and lead are the tool’s', (_name, change) => {
    const real = { ...SHOT, ...change };
    const found = solveShot(real, 40);
    const tool = byTool(real, 50);
    expect(found.velocity / tool.speed).toBeCloseTo(1, 2);
    expect(found.exitTime / tool.time).toBeCloseTo(1, 3);
    expect(Math.abs(found.exitTime - found.burstTime - tool.seal.lead)).toBeLessThan(1e-5);
  });
});
