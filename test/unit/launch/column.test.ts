import { describe, expect, it } from 'vitest';
import { advance, contents, createColumn, predict, rubOnWall } from '../../../src/launch/column';
import { shocksIn } from '../../../src/launch/profiles';
import { pulseAt } from '../../validate/model/exact';
import { runTube } from '../../validate/model/tube';

const GAS = { gamma: 1.4, constant: 287.05287 };

describe('a column of gas', () => {
  it('uniform flow stays uniform on a mesh that moves and stretches', () => {
    const state = { density: 1.2, velocity: 50, pressure: 1e5 };
    const column = createColumn(GAS, 20, 0, 1, () => state);
    const flux = (speed: number) => {
      const total = 1e5 / 0.4 + 0.5 * 1.2 * 2500;
      const through = 50 - speed;
      return {
        ...{ speed, mass: 1.2 * through, momentum: 1.2 * 50 * through + 1e5 },
        energy: total * through + 1e5 * 50,
      };
    };
    for (let i = 0; i < 200; i++) {
      predict(column, 2e-5, -30, 120);
      advance(column, 2e-5, flux(-30), flux(120));
    }
    expect(column.right - column.left).toBeCloseTo(1.6, 12);
    for (let i = 0; i < 20; i++) {
      expect(column.state.density[i]).toBeCloseTo(1.2, 12);
      expect(column.state.velocity[i]).toBeCloseTo(50, 9);
      expect((column.state.pressure[i] as number) / 1e5).toBeCloseTo(1, 12);
    }
  });

  it('wall friction slows the gas and leaves its energy', () => {
    const column = createColumn(GAS, 10, 0, 1, () => ({
      ...{ density: 1.2, velocity: 200, pressure: 1e5 },
    }));
    const before = contents(column);
    rubOnWall(column, 1e-3, 0.02, 0.03);
    const after = contents(column);
    expect(after.energy).toBe(before.energy);
    expect(after.mass).toBe(before.mass);
    // f v^2 / (2 D) over a step: 200 / (1 + 0.02 * 200 * 1e-3 / 0.06).
    expect(column.state.velocity[5]).toBeCloseTo(200 / (1 + 4e-3 / 0.06), 9);
    expect(column.state.pressure[5] as number).toBeGreaterThan(1e5);
  });

  it('says so where a vacuum forms', () => {
    const column = createColumn(GAS, 4, 0, 1, () => ({ density: 1, velocity: 0, pressure: 1e5 }));
    const still = { speed: 0, mass: 0, momentum: 1e5, energy: 0 };
    predict(column, 1e-3, 0, 0);
    expect(() => advance(column, 1e-3, still, { ...still, mass: 2000 })).toThrow(/vacuum/);
  });
});

describe('shocks in a column', () => {
  it('finds the shock of a shock tube with its strength and way, and no other', () => {
    const left = { rho: 1, u: 0, p: 1 };
    const right = { rho: 0.125, u: 0, p: 0.1 };
    const [shock, ...others] = shocksIn(runTube(200, 0, 1, (x) => (x < 0.5 ? left : right), 0.2));
    expect(others).toEqual([]);
    expect(shock?.direction).toBe('forwards');
    // Sod: speed 1.75216, pressure ratio 3.0313.
    expect(shock?.position).toBeCloseTo(0.5 + 0.2 * 1.75216, 2);
    expect(shock?.strength).toBeCloseTo(3.03, 1);
    const mirrored = runTube(200, 0, 1, (x) => (x < 0.5 ? right : left), 0.2);
    expect(shocksIn(mirrored).map(({ direction }) => direction)).toEqual(['backwards']);
  });

  it('calls no smooth wave one', () => {
    expect(shocksIn(runTube(200, 0, 1, (x) => pulseAt(x, 0), 0.3))).toEqual([]);
  });
});
