import { expect, test } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { OUTSIDE, streakLineFor, streakReader } from '../../../src/image/streak';

const ramp = (width: number, height: number, slope: readonly [number, number]): GreyFrame => ({
  index: 0,
  width,
  height,
  white: 65_535,
  data: Uint16Array.from(
    { length: width * height },
    (_, p) => 1000 + slope[0] * (p % width) + slope[1] * Math.floor(p / width),
  ),
});

test('a linear scene is read exactly between pixels, whatever the band', () => {
  const frame = ramp(80, 40, [30, 7]);
  const axis = [Math.cos(0.1), Math.sin(0.1)] as const;
  const line = streakLineFor(80, 40, [20.3, 18.6], axis, 4);
  const row = streakReader(frame.width, frame.height, line)(frame);
  expect(row.length).toBe(line.length);
  // Inside, where the whole band is in the frame, the band's mean is the value on its axis.
  for (let i = 5; i < 60; i++) {
    const x = 20.3 + (line.from + i) * axis[0];
    const y = 18.6 + (line.from + i) * axis[1];
    if (x < 1 || x > 78 || y < 5 || y > 34) continue;
    expect(row[i]).toBeCloseTo(1000 + 30 * x + 7 * y, 1);
  }
});

test('the line runs from border to border, and back to front against the axis', () => {
  const along = streakLineFor(100, 50, [30, 20], [2, 0], 3);
  expect(along).toMatchObject({ from: -30, length: 100, axis: [1, 0] });
  const back = streakLineFor(100, 50, [30, 20], [-1, 0], 3);
  expect(back).toMatchObject({ from: -69, length: 100 });
  const down = streakLineFor(100, 50, [30, 20], [0, 1], 3);
  expect(down).toMatchObject({ from: -20, length: 50 });
});

test('what lies outside the frame is marked, and a line that misses it is empty', () => {
  const frame = ramp(40, 20, [1, 1]);
  const line = { origin: [0, 10], axis: [1, 0], from: -5, length: 50, halfWidth: 2 } as const;
  const row = streakReader(frame.width, frame.height, line)(frame);
  expect(Array.from(row.slice(0, 4))).toEqual([OUTSIDE, OUTSIDE, OUTSIDE, OUTSIDE]);
  expect(row[6]).toBeGreaterThan(0);
  expect(row[49]).toBe(OUTSIDE);
  expect(streakLineFor(40, 20, [10, -30], [1, 0], 2).length).toBe(0);
});
