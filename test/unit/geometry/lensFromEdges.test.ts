import { describe, expect, it } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { lensFromEdgePoints } from '../../../src/geometry/lensFromEdges';
import { lensFromEdges } from '../../../src/reduction/calibrateLens';
import { normalStream } from '../noise';
import { type Pinhole, shows } from './pinhole';

const WIDTH = 640;
const HEIGHT = 360;
/** In units of the frame's longer side, as the calibration has it, so that k1 compares directly. */
const camera = (k1: number): Pinhole => ({
  focal: WIDTH,
  principal: [(WIDTH - 1) / 2, (HEIGHT - 1) / 2],
  k1,
  k2: 0,
  yaw: 0,
  pitch: 0,
});

/** Points of the straight line y = offset + slope x at unit depth, shown by the camera, with noise, px. */
function edge(k1: number, offset: number, slope: number, noise: number, seed: number) {
  const normal = normalStream(seed);
  return Array.from({ length: 90 }, (_, i) => {
    const x = -0.46 + (0.92 * i) / 89;
    const [px, py] = shows(camera(k1), [x, offset + slope * x, 1]);
    return [px, py + noise * normal()] as const;
  });
}

describe('lensFromEdgePoints', () => {
  it.each([-0.25, -0.05, 0.15])('finds k1 = %f from edges that bow', (k1) => {
    const lens = lensFromEdgePoints(
      [edge(k1, -0.22, 0.05, 0.1, 1), edge(k1, 0.2, -0.02, 0.1, 2)],
      WIDTH,
      HEIGHT,
    );
    if (!lens.ok) throw new Error(lens.reason.message);
    expect(Math.abs(lens.value.k1.value - k1)).toBeLessThan(3 * lens.value.k1.u);
    expect(Math.abs(lens.value.k1.value - k1)).toBeLessThan(0.01);
    expect(lens.value.k1.u).toBeLessThan(0.06);
    expect(lens.value.rms).toBeCloseTo(0.1, 1);
  });

  it('scatters as its own noise part says', () => {
    const errors: number[] = [];
    let u = 0;
    for (let seed = 1; seed <= 60; seed++) {
      // An undistorted lens: nothing else is uncertain then but k1 by its points.
      const lens = lensFromEdgePoints([edge(0, -0.22, 0.03, 0.2, seed)], WIDTH, HEIGHT);
      if (!lens.ok) throw new Error(lens.reason.message);
      errors.push(lens.value.k1.value);
      u += lens.value.k1.u / 60;
    }
    const rms = Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);
    expect(rms / u).toBeGreaterThan(0.7);
    expect(rms / u).toBeLessThan(1.3);
  });

  it.each([
    [[edge(-0.2, 0.01, 0.01, 0.1, 1)], 'edgeThroughCentre'],
    [[edge(-0.2, 0.2, 0, 0.1, 1).slice(0, 20)], 'edgeTellsLittle'],
    [[edge(-0.2, 0.2, 0, 0.1, 1).slice(0, 5)], 'edgeTooShort'],
    [[], 'edgeTooShort'],
  ] as const)('refuses %# what tells nothing', (edges, code) => {
    const lens = lensFromEdgePoints(edges, WIDTH, HEIGHT);
    expect(lens.ok ? 'given' : lens.reason.code).toBe(code);
  });
});

describe('lensFromEdges', () => {
  /** A dark bar over a bright ground, its two long edges straight in the scene, bent by the camera. */
  function picture(k1: number): GreyFrame {
    const normal = normalStream(9);
    const data = new Uint8Array(WIDTH * HEIGHT);
    const { focal, principal } = camera(k1);
    for (let y = 0; y < HEIGHT; y++) {
      for (let x = 0; x < WIDTH; x++) {
        let dark = 0;
        for (const d of [-0.375, -0.125, 0.125, 0.375]) {
          const [ud, vd] = [(x - principal[0]) / focal, (y + d - principal[1]) / focal];
          let [u, v] = [ud, vd];
          for (let i = 0; i < 15; i++) {
            const bent = 1 + k1 * (u * u + v * v);
            [u, v] = [ud / bent, vd / bent];
          }
          if (v > -0.22 + 0.03 * u && v < 0.2) dark += 0.25;
        }
        data[y * WIDTH + x] = Math.round(180 - 110 * dark + 2 * normal());
      }
    }
    return { index: 0, width: WIDTH, height: HEIGHT, data, white: 255 };
  }

  it('follows edges in the picture and finds the lens that bent them', () => {
    const k1 = -0.2;
    const ends = (offset: number, slope: number, by: number) =>
      [-0.45, 0.45].map((x) => {
        const [px, py] = shows(camera(k1), [x, offset + slope * x, 1]);
        return [px, py + by] as const;
      }) as [readonly [number, number], readonly [number, number]];
    // Marked two pixels off, as a hand does.
    const lens = lensFromEdges(picture(k1), [ends(-0.22, 0.03, 2), ends(0.2, 0, -2)]);
    if (!lens.ok) throw new Error(lens.reason.message);
    expect(Math.abs(lens.value.k1.value - k1)).toBeLessThan(0.006);
    expect(lens.value.rms).toBeLessThan(0.1);
    const blank = lensFromEdges(picture(k1), [
      [
        [100, 170],
        [540, 190],
      ],
    ]);
    expect(blank.ok ? '' : blank.reason.code).toBe('noEdge');
  });
});
