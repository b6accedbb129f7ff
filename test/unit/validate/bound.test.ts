import { describe, expect, it } from 'vitest';
import { centreBound } from '../../validate/bound';
import type { Ball, Scene } from '../../validate/render/scene';

const window = { x0: 0, y0: 0, width: 64, height: 64 };
const ball: Ball = { x: 31.4, y: 31.8, radius: 20, sweep: [0, 0], brightness: 160, light: null };
const scene: Scene & { ball: Ball } = {
  backdrop: { level: 60, slope: [0, 0], waves: [], flange: null },
  ball,
  fragment: null,
  softness: 0.6,
};
const camera = { read: 25 - 1 / 12, gain: 0 };
const unknown = { radiusU: 1e3, softnessU: 1e3, sweepU: 1e3 };
const light = { ambient: 0.45, azimuth: 0.5, tilt: 0.9, limb: 0.1 };
const of = (change: Partial<Scene & { ball: Ball }>, prior = unknown, frames = 1) =>
  centreBound({ ...scene, ...change }, window, camera, prior, frames);

describe('the bound of the centre', () => {
  it('is that of an even disc with a Gaussian edge in closed form', () => {
    // Information on x: contrast^2 / noise^2 times the integral over the edge of (cos(angle) density)^2,
    // pi radius / (2 sqrt(pi) sigma); on the radius twice that. No published source; derived here.
    const sigma = Math.sqrt(0.6 ** 2 + 1 / 12);
    const information = (Math.sqrt(Math.PI) * ball.radius * (100 / 5) ** 2) / (2 * sigma);
    const bound = of({});
    expect(Math.sqrt(bound.xx * information)).toBeCloseTo(1, 2);
    expect(Math.sqrt(bound.yy * information)).toBeCloseTo(1, 2);
    expect(Math.abs(bound.xy)).toBeLessThan(0.01 * bound.xx);
    // Contrast, background and softness cost the radius a little.
    expect(bound.radius * Math.sqrt(2 * information)).toBeGreaterThan(0.99);
    expect(bound.radius * Math.sqrt(2 * information)).toBeLessThan(1.1);
  });

  it('falls with the noise and rises with the blur', () => {
    const still = of({}).xx;
    expect(
      centreBound(scene, window, { read: 4 * 25 - 1 / 12, gain: 0 }, unknown, 1).xx,
    ).toBeCloseTo(4 * still, 6);
    expect(of({ softness: 1.5 }).xx).toBeGreaterThan(1.8 * still);
    expect(of({ ball: { ...ball, sweep: [20, 0] } }).xx).toBeGreaterThan(1.5 * still);
  });

  it('of a half hidden disc falls far when the radius is known', () => {
    const flange = { normal: [1, 0] as const, offset: ball.x, level: 60 };
    const half = { backdrop: { ...scene.backdrop, flange } };
    const free = of(half);
    const known = of(half, { ...unknown, radiusU: 0.001 });
    expect(free.xx).toBeGreaterThan(2 * of({}).xx);
    expect(known.xx).toBeLessThan(0.6 * free.xx);
  });

  it('of a matt ball is the lower the more frames tell of its light', () => {
    const lit = { ball: { ...ball, light } };
    const [alone, few, many] = [1, 5, 1000].map((frames) => of(lit, unknown, frames).xx);
    expect(few).toBeLessThan(alone as number);
    expect(many).toBeLessThan(few as number);
  });
});
