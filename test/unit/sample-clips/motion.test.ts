import { describe, expect, it } from 'vitest';
import {
  bulgeHeight,
  capHeight,
  holeRadius,
  type SealLaw,
  tearTime,
} from '../../../sample-clips/render/film';
import { dragPerLength, fly } from '../../../sample-clips/render/motion';
import { setStage } from '../../../sample-clips/render/stage';
import { tinyClip } from './tinyClip';

const law = {
  exitTime: 0.002,
  velocity: 180,
  boreAcceleration: 5000,
  drag: 0.105,
  muzzleZone: null,
  gravity: [0, 0],
} as const;

describe('the flight', () => {
  it('follows the closed form of quadratic drag', () => {
    const flight = fly(law, 0.01);
    for (const tau of [1e-7, 0.0004321, 0.003, 0.00799]) {
      // s = ln(1 + k v0 t) / k: the textbook solution of dv/dt = -k v^2.
      const s = Math.log1p(law.drag * law.velocity * tau) / law.drag;
      expect(flight.position(law.exitTime + tau)[0]).toBeCloseTo(s, 11);
      const v = law.velocity / (1 + law.drag * law.velocity * tau);
      expect(flight.velocity(law.exitTime + tau)[0]).toBeCloseTo(v, 8);
    }
  });

  it('is smooth in place and speed through the muzzle plane', () => {
    const flight = fly(law, 0.01);
    const before = flight.position(law.exitTime - 1e-9)[0];
    const after = flight.position(law.exitTime + 1e-9)[0];
    expect(after - before).toBeCloseTo(2e-9 * law.velocity, 12);
    expect(flight.velocity(law.exitTime - 1e-9)[0]).toBeCloseTo(law.velocity, 4);
  });

  it('loses the stated share in the muzzle zone beyond drag', () => {
    const zone = { loss: 0.0125, length: 0.03 };
    const flight = fly({ ...law, drag: 0, muzzleZone: zone }, 0.01);
    // v(s) = v0 (1 - loss (1 - exp(-s / length))) when there is no drag.
    const [s] = flight.position(0.004);
    const expected = 180 * (1 - 0.0125 * (1 - Math.exp(-s / 0.03)));
    expect(flight.velocity(0.004)[0]).toBeCloseTo(expected, 7);
    expect(s).toBeGreaterThan(0.3);
  });

  it('falls freely across the axis', () => {
    const flight = fly({ ...law, drag: 0, velocity: 10, gravity: [0, 9.81] }, 0.1);
    expect(flight.position(0.052)[1]).toBeCloseTo(0.5 * 9.81 * 0.05 ** 2, 9);
  });

  it('has the drag of the usual formula', () => {
    // Force 1/2 rho v^2 A Cd on 1.9 g at 100 m/s, written out.
    const force = 0.5 * 1.2 * 100 ** 2 * (Math.PI / 4) * 0.03 ** 2 * 0.47;
    expect(dragPerLength(0.47, 1.2, 0.015, 0.0019) * 100 ** 2).toBeCloseTo(force / 0.0019, 9);
  });
});

describe('the seal', () => {
  const seal: SealLaw = { onset: 1, burst: 1.001, opening: 1e-4, height: 0.009, radius: 0.0155 };

  it('bulges from nothing, faster and faster, to its height at the burst', () => {
    const heights = Array.from({ length: 11 }, (_, k) => bulgeHeight(seal, 1 + k * 1e-4));
    expect(heights[0]).toBe(0);
    expect(heights[10]).toBeCloseTo(0.009, 9);
    const steps = heights.slice(1).map((h, k) => h - (heights[k] as number));
    for (let k = 1; k < steps.length; k++) {
      expect(steps[k]).toBeGreaterThan(steps[k - 1] as number);
    }
  });

  it('is a spherical cap of that height over the ring', () => {
    expect(capHeight(seal, 0.009, 0)).toBeCloseTo(0.009, 12);
    expect(capHeight(seal, 0.009, 0.0155)).toBe(0);
    // Sagitta: the sphere through middle and rim.
    const sphere = (0.0155 ** 2 + 0.009 ** 2) / (2 * 0.009);
    const rise = capHeight(seal, 0.009, 0.008) + sphere - 0.009;
    expect(Math.hypot(rise, 0.008)).toBeCloseTo(sphere, 12);
  });

  it('is whole until the burst, then torn from the middle outwards', () => {
    expect(holeRadius(seal, 1.001)).toBe(0);
    expect(holeRadius(seal, 1.001 + 1e-7)).toBeGreaterThan(0);
    expect(holeRadius(seal, tearTime(seal, 0.007))).toBeCloseTo(0.007, 9);
  });

  it('throws its pieces after the burst, some faster than the ball, none into it', () => {
    const stage = setStage(tinyClip);
    const { pieces } = stage.seal;
    expect(pieces).toHaveLength(6);
    expect(pieces.filter((p) => p.startSpeed > 1.2 * stage.truth.velocity).length).toBeGreaterThan(
      1,
    );
    for (const piece of pieces) {
      expect(piece.release).toBeGreaterThan(stage.truth.burstTime);
      for (let t = piece.release; t < 0.002; t += 3e-6) {
        const [s = 0, q = 0] = stage.flight?.position(t) ?? [];
        const [ps, pq, pz] = piece.middle(t);
        expect(Math.hypot(ps - s, pq - q, pz)).toBeGreaterThan(stage.truth.ballRadius);
      }
    }
    const pieceCount = (t: number): number => {
      const { behind, before } = stage.seal.sheets(t);
      return behind.length + before.length;
    };
    expect(pieceCount(stage.truth.burstTime - 1e-7)).toBe(1);
    expect(pieceCount(stage.truth.burstTime + 2e-4)).toBe(2 + 6 + 6);
  });
});
