import { describe, expect, it } from 'vitest';
import { flatGrid } from '../../../src/app/flatGrid';
import type { ImagePoint } from '../../../src/core/units';
import { buildView } from '../../../src/geometry/view';
import type { Scale } from '../../../src/shot/schema';

const FRAME = { width: 640, height: 480, pixelAspect: 1 };
const plain: Scale = { lengths: [], cameraDistance: null, plane: null, lens: null };
const bent: Scale = {
  ...plain,
  lens: {
    k1: { value: -0.3, u: 0 },
    k2: { value: 0.1, u: 0 },
    centre: [319.5, 239.5],
    centreU: 0,
    focal: { value: 536, u: 0 },
    correlation: 0,
  },
};
const tilted: Scale = {
  ...plain,
  plane: {
    corners: [
      [100, 100],
      [540, 160],
      [540, 320],
      [100, 380],
    ],
    width: 0.4,
    height: 0.2,
    u: 0,
    cornerU: 0.3,
    depthOffset: 0,
    depthOffsetU: 0,
  },
};

function gridOf(scale: Scale) {
  const view = buildView(scale, FRAME, [200, 240]);
  if (!view.ok) throw new Error(view.reason.message);
  return { view: view.value, grid: flatGrid(view.value, FRAME) };
}

const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** How far a line's middle lies from the chord through its ends, px. */
function bow(line: readonly ImagePoint[]): number {
  const [a, b] = [line[0] as ImagePoint, line.at(-1) as ImagePoint];
  const [x, y] = line[Math.floor(line.length / 2)] as ImagePoint;
  const chord = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs((x - a[0]) * (b[1] - a[1]) - (y - a[1]) * (b[0] - a[0])) / chord;
}

describe('the grid of the flight plane', () => {
  it('is level and upright where nothing bends the view', () => {
    const { grid } = gridOf(plain);
    // 640 px in fields of 53 px: 12 or 13 upright lines, 9 or 10 level ones.
    expect(grid.spacing).toBe(53);
    expect(grid.lines.length).toBeGreaterThanOrEqual(21);
    for (const line of grid.lines) {
      const across = spread(line.map(([x]) => x));
      const down = spread(line.map(([, y]) => y));
      expect(Math.min(across, down)).toBeLessThan(1e-9);
    }
  });

  it.each([
    ['a lens', bent],
    ['a tilt', tilted],
  ])('is straight and even on the plane behind %s', (_name, scale) => {
    const { view, grid } = gridOf(scale);
    for (const line of grid.lines) {
      const flat = line.map((point) => {
        const there = view.flatten(point);
        if (!there.ok) throw new Error(there.reason.message);
        return there.value;
      });
      const [xs, ys] = [flat.map(([x]) => x), flat.map(([, y]) => y)];
      const fixed = spread(xs) < spread(ys) ? xs : ys;
      expect(spread(fixed)).toBeLessThan(1e-6);
      const nearest = Math.round((fixed[0] as number) / grid.spacing) * grid.spacing;
      expect(Math.abs((fixed[0] as number) - nearest)).toBeLessThan(1e-6);
    }
  });

  it('bows under a lens, and only under a lens', () => {
    const most = (scale: Scale) => Math.max(...gridOf(scale).grid.lines.map(bow));
    expect(most(bent)).toBeGreaterThan(10);
    expect(most(tilted)).toBeLessThan(1e-6);
  });

  it('reaches the whole picture and ends near its border', () => {
    for (const scale of [plain, bent, tilted]) {
      const points = gridOf(scale).grid.lines.flat();
      expect(Math.min(...points.map(([x]) => x))).toBeLessThan(60);
      expect(Math.max(...points.map(([x]) => x))).toBeGreaterThan(580);
      expect(points.every(([x, y]) => x > -33 && x < 673 && y > -33 && y < 513)).toBe(true);
    }
  });
});
