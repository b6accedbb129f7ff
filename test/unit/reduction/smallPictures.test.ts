import { expect, it } from 'vitest';
import { middleFrames, smallPictures } from '../../../src/reduction/smallPictures';

it('names every frame where there are fewer than pictures', () => {
  expect(middleFrames(3, 10)).toEqual([0, 1, 2]);
  expect(middleFrames(10, 3)).toEqual([1, 5, 8]);
});

it('makes frames from the middles of equal parts small, and no others', () => {
  const frame = { width: 64, height: 32, data: new Uint8Array(64 * 32).fill(50), white: 255 };
  const smallOf = smallPictures(40, { count: 4, side: 32 });
  const small = Array.from({ length: 40 }, (_, index) => smallOf({ index, ...frame }));
  expect(small.flatMap((one) => one?.index ?? [])).toEqual([5, 15, 25, 35]);
  expect(small[5]).toMatchObject({ width: 32, height: 16, white: 255 });
});
