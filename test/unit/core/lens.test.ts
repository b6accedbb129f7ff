import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distort, foldRadius, undistort } from '../../../src/core/lens';

const lens = (k1: number, k2: number) => ({ k1, k2, centre: [511.5, 255.5] as const, focal: 900 });

describe('lens', () => {
  it('bends outwards points by the radial polynomial', () => {
    // One focal length to the right with k1 = -0.2, k2 = 0.05: shown at 1 - 0.2 + 0.05 of it.
    const [x, y] = distort(lens(-0.2, 0.05), [511.5 + 900, 255.5]);
    expect(x).toBeCloseTo(511.5 + 900 * 0.85, 9);
    expect(y).toBeCloseTo(255.5, 12);
  });

  it('is undone wherever it does not fold', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        fc.double({ min: -0.2, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 0.97, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (k1, k2, share, angle) => {
          const bent = lens(k1, k2);
          const r = share * Math.min(1.2, foldRadius(bent) ?? 1.2) * bent.focal;
          const at = [511.5 + r * Math.cos(angle), 255.5 + r * Math.sin(angle)] as const;
          const back = undistort(bent, distort(bent, at));
          expect(back.ok).toBe(true);
          if (!back.ok) return;
          expect(Math.hypot(back.value[0] - at[0], back.value[1] - at[1])).toBeLessThan(1e-8);
        },
      ),
    );
  });

  it('refuses points beyond the fold', () => {
    // r (1 - 0.3 r^2) is greatest at r = 1 / sqrt(0.9): 0.7027 focal lengths.
    const bent = lens(-0.3, 0);
    expect(foldRadius(bent)).toBeCloseTo(1 / Math.sqrt(0.9), 12);
    expect(undistort(bent, [511.5 + 0.7 * 900, 255.5]).ok).toBe(true);
    const beyond = undistort(bent, [511.5 + 0.71 * 900, 255.5]);
    expect(beyond.ok ? '' : beyond.reason.code).toBe('outsideLens');
  });
});
