import { describe, expect, it } from 'vitest';
import { passBall } from '../../../src/launch/piston';

const GAS = { gamma: 1.4, constant: 287.05287 };
const gas = (pressure: number, velocity = 0) => ({
  ...{ pressure, velocity },
  density: pressure / (GAS.constant * 293.15),
});

describe('what passes the ball', () => {
  it('nothing where there is no gap: two walls', () => {
    const { leak, push, hold } = passBall(GAS, gas(1e5), gas(1e3), 0, 0);
    expect(leak).toBe(0);
    expect(push).toBeCloseTo(1e5, 6);
    expect(hold).toBeCloseTo(1e3, 6);
  });

  it('a choked leak into thin gas, with the thrust of a sonic jet into a vacuum', () => {
    const gap = 0.03;
    const { leak, basePressure, hold } = passBall(GAS, gas(1e5), gas(10), 0, gap);
    // Choked at the stagnation state behind, which the leak lowers by about a per cent.
    const choked = (pressure: number) => (gap * 0.0404184 * pressure) / Math.sqrt(293.15);
    expect(leak).toBeLessThan(choked(1e5));
    expect(leak).toBeGreaterThan(choked(0.97e5));
    // Momentum of a sonic stream: p* (1 + gamma) times the area, p* = 0.52828 of the stagnation pressure.
    expect(hold / (gap * 0.52828 * 2.4 * basePressure)).toBeCloseTo(1, 2);
  });

  it('a leak backwards where the pressure ahead is higher, the mirror of that forwards', () => {
    const forwards = passBall(GAS, gas(2e5, 30), gas(1e5, 10), 20, 0.05);
    const backwards = passBall(GAS, gas(1e5, -10), gas(2e5, -30), -20, 0.05);
    expect(backwards.leak).toBeCloseTo(-forwards.leak, 9);
    expect(backwards.push).toBeCloseTo(forwards.hold, 6);
    expect(backwards.hold).toBeCloseTo(forwards.push, 6);
  });

  it('keeps the total enthalpy seen from the ball', () => {
    const speed = 150;
    const { leak, carried, basePressure, frontPressure, push, hold } = passBall(
      ...[GAS, gas(1e5, 140), gas(2e4, 160), speed, 0.05],
    );
    expect(leak).toBeGreaterThan(0);
    // Energy out of the gas behind, less the ball's work, is what enters that ahead: the leak's enthalpy and kinetic
    // energy there and the work of the ball's front, with the state ahead read off its momentum flux.
    const into = carried + basePressure * speed - speed * (push - hold);
    const velocity = (hold - frontPressure) / leak;
    const density = leak / (velocity - speed);
    const total = 3.5 * (frontPressure / density) + 0.5 * velocity ** 2;
    expect((leak * total + frontPressure * speed) / into).toBeCloseTo(1, 9);
  });

  it('into a given pressure, and none backwards out of nowhere', () => {
    expect(passBall(GAS, gas(1e5), 2e4, 100, 0.05).leak).toBeGreaterThan(0);
    const back = passBall(GAS, gas(1e4), 1e5, 100, 0.05);
    expect(back.leak).toBe(0);
    expect(back.hold).toBe(1e5);
  });

  it('nothing leaks between equal pressures', () => {
    expect(passBall(GAS, gas(1e5), gas(1e5), 0, 0.05).leak).toBeCloseTo(0, 9);
  });
});
