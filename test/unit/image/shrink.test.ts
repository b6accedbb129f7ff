import { expect, it } from 'vitest';
import { shrink } from '../../../src/image/shrink';

const frame = (width: number, height: number) => ({
  index: 4,
  width,
  height,
  data: Uint16Array.from({ length: width * height }, (_, i) => i),
  white: 4095,
});

it('averages squares, leaves out what fills none, and keeps depth and number', () => {
  const { frame: small, by } = shrink(frame(5, 4), 2);
  expect(by).toBe(3);
  expect(small).toMatchObject({ index: 4, width: 1, height: 1, white: 4095 });
  // Rows 0..2 of columns 0..2 of a frame 5 wide: mean of 0 1 2, 5 6 7, 10 11 12.
  expect([...small.data]).toEqual([6]);
  expect(small.data).toBeInstanceOf(Uint16Array);
});

it('leaves a frame that is small enough as it is', () => {
  const { frame: same, by } = shrink(frame(5, 4), 5);
  expect(by).toBe(1);
  expect(same).toEqual(frame(5, 4));
});

it('never shrinks a side away', () => {
  const { frame: line } = shrink(frame(40, 2), 4);
  expect([line.width, line.height]).toEqual([20, 1]);
});
