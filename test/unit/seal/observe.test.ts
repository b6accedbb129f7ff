import { describe, expect, it } from 'vitest';
import { ExitframeError } from '../../../src/core/reason';
import { capRoughness } from '../../../src/seal/cap';
import { observeSeal } from '../../../src/seal/observe';
import { drawScene, findComponents, type Scene } from './scene';
import { INTERVAL, observeScene, randomScene, viewOf } from './shots';

const growing = (changes: Partial<Scene> = {}): Scene =>
  randomScene(3, {
    onset: 0,
    burst: 16 * INTERVAL,
    bulge: 16,
    power: 1,
    exposure: 0,
    film: 210,
    ball: null,
    frames: 16,
    ...changes,
  });

describe('observeSeal', () => {
  it('follows the apex of a smooth cap to a fraction of a pixel', () => {
    const scene = growing();
    const half = 1.03 * scene.ballRadius;
    for (const o of observeScene(scene).slice(5)) {
      // The apex stands 1 px a frame out; over the band the front is a mean over, the parabola loses a third of its sag.
      const sag = (o.frame * (3 / half) ** 2) / 3;
      expect(Math.abs(o.front - (o.frame - sag))).toBeLessThan(0.35);
      expect(o.roughness).toBeLessThan(0.5);
      expect(o.opening).toBeLessThan(0.05);
      expect(o.pieces).toBe(1);
      expect(o.frontU).toBeGreaterThan(0);
      // Area under a parabola: 4/3 of half width times height.
      expect(o.changedArea / ((4 / 3) * half * o.frame)).toBeCloseTo(1, 0);
    }
  });

  it('grows its uncertainty with the noise', () => {
    const quiet = observeScene(growing({ noise: 0.5 }))[12]?.frontU ?? 0;
    const noisy = observeScene(growing({ noise: 4 }))[12]?.frontU ?? 0;
    expect(noisy).toBeGreaterThan(1.3 * quiet);
  });

  it('shows a torn film as rough, open and in pieces', () => {
    const scene = randomScene(8, { film: 210 });
    const at = (frame: number) => observeScene(scene)[frame];
    const whole = at(Math.floor(scene.burst / INTERVAL));
    const torn = at(Math.floor(scene.burst / INTERVAL) + 2);
    if (whole === undefined || torn === undefined) throw new Error('frames are missing');
    expect(torn.roughness).toBeGreaterThan(4 * whole.roughness);
    expect(torn.opening).toBeGreaterThan(whole.opening + 0.2);
    expect(torn.pieces).toBeGreaterThan(whole.pieces);
    expect(torn.reach).toBeGreaterThan(whole.reach + 5);
  });

  it('sees nothing in a still scene', () => {
    for (const o of observeScene(growing({ film: null }))) {
      expect([o.front, o.reach, o.pieces, o.changedArea]).toEqual([0, 0, 0, 0]);
    }
  });

  it('refuses a background of another size', () => {
    const scene = growing({ frames: 1 });
    const { frames, background } = drawScene(scene);
    const [frame] = frames;
    if (frame === undefined) throw new Error('no frame');
    const other = { ...background, width: background.width - 1 };
    expect(() => observeSeal(frame, other, viewOf(scene), findComponents)).toThrow(ExitframeError);
  });
});

describe('capRoughness', () => {
  it('leaves nothing of a polynomial of fourth order', () => {
    const outline = Float64Array.from({ length: 41 }, (_, i) => {
      const x = i / 20 - 1;
      return 9 + x - 6 * x ** 2 + 2 * x ** 3 - 3 * x ** 4;
    });
    expect(capRoughness(outline)).toBeLessThan(1e-10);
  });

  it('gives the amplitude of a fine ripple', () => {
    const outline = Float64Array.from({ length: 401 }, (_, i) => Math.SQRT2 * Math.sin(i));
    // Root mean square of a sine of amplitude sqrt 2 is 1.
    expect(capRoughness(outline)).toBeCloseTo(1, 1);
  });
});
