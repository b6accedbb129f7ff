import { describe, expect, it } from 'vitest';
import { HANDLE, picturesThatFit, ribbonScale } from '../../../src/ui/stage/ribbon';

const picture = (index: number) => ({
  index,
  width: 100,
  height: 25,
  data: new Uint8Array(2500),
  white: 255,
});

describe('the ribbon', () => {
  it('lays frames under the middle of the slider’s handle', () => {
    const { at, cover } = ribbonScale(101, 1014);
    expect(at(0)).toBe(HANDLE / 2);
    expect(at(100)).toBe(1014 - HANDLE / 2);
    expect(at(50)).toBe(507);
    expect(cover(0, 100)[0]).toBeCloseTo(2, 9);
    expect(cover(0, 100)[1]).toBeCloseTo(1012, 9);
    // A film of one frame has no length.
    expect(ribbonScale(1, 500).at(0)).toBe(HANDLE / 2);
  });

  it('shows as many pictures as stand side by side, each in its own stretch of the film', () => {
    const pictures = Array.from({ length: 48 }, (_, i) => picture(Math.floor((i + 0.5) * 10)));
    const scale = ribbonScale(480, 814);
    const placed = picturesThatFit(pictures, 480, scale, 40);
    expect(placed).toHaveLength(5);
    placed.forEach(({ picture: { index }, left, right }, i) => {
      expect(index).toBeGreaterThanOrEqual(i * 96);
      expect(index).toBeLessThan((i + 1) * 96);
      expect(right - left).toBeCloseTo((scale.at(479.5) - scale.at(-0.5)) / 5, 9);
    });
  });

  it('leaves a stretch empty until its picture has come', () => {
    const placed = picturesThatFit([picture(5), picture(100)], 480, ribbonScale(480, 814), 40);
    expect(placed.map((one) => one.picture.index)).toEqual([5, 100]);
    expect(picturesThatFit([], 480, ribbonScale(480, 814), 40)).toEqual([]);
  });
});
