import { describe, expect, it } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { createComposite } from '../../../src/image/composite';
import type { Background } from '../../../src/image/types';

const WIDTH = 60;
const HEIGHT = 20;

const scene = (white = 255): Background => ({
  width: WIDTH,
  height: HEIGHT,
  level: new Float32Array(WIDTH * HEIGHT).fill(100.4),
  white,
  noise: { readVariance: 4, gain: 0 },
});

/** The scene with noise of 2 grey values and bright squares. */
function frame(index: number, ...squares: readonly (readonly [x: number, y: number])[]): GreyFrame {
  const data = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, p) => 98 + ((p * 7 + index) % 5));
  for (const [x, y] of squares) {
    for (let row = y; row < y + 4; row++)
      data.fill(200 + index, row * WIDTH + x, row * WIDTH + x + 4);
  }
  return { index, width: WIDTH, height: HEIGHT, data, white: 255 };
}
const at = ({ data, width }: GreyFrame, x: number, y: number) => data[y * width + x];

describe('the whole flight in one picture', () => {
  it('holds what moved in every frame over the still scene, without their noise', () => {
    const composite = createComposite(scene());
    for (let i = 0; i < 5; i++) composite.add(frame(i, [i * 10, 8]), null);
    const picture = composite.picture();
    for (let i = 0; i < 5; i++) expect(at(picture, i * 10 + 1, 9)).toBe(200 + i);
    const still = [...picture.data].filter((grey) => grey === 100).length;
    expect(still).toBe(WIDTH * HEIGHT - 5 * 16);
  });

  it('takes over only what lies in the disc', () => {
    const composite = createComposite(scene());
    composite.add(frame(1, [10, 8], [40, 2]), { x: 11.5, y: 9.5, radius: 3 });
    expect(at(composite.picture(), 11, 9)).toBe(201);
    expect(at(composite.picture(), 41, 3)).toBe(100);
    // A disc over the edge of the picture, and one beyond it.
    composite.add(frame(2, [0, 0]), { x: -1, y: -1, radius: 3 });
    composite.add(frame(2, [0, 0]), { x: -90, y: 300, radius: 3 });
    expect(at(composite.picture(), 0, 0)).toBe(202);
    expect(at(composite.picture(), 3, 3)).toBe(100);
  });

  it('keeps the stronger change where frames overlap, and 16 bit', () => {
    const composite = createComposite({ ...scene(65_535) });
    const deep = (index: number, grey: number): GreyFrame => ({
      index,
      width: WIDTH,
      height: HEIGHT,
      data: new Uint16Array(WIDTH * HEIGHT).fill(grey),
      white: 65_535,
    });
    composite.add(deep(0, 9000), null);
    composite.add(deep(1, 5000), null);
    expect(composite.picture().data).toBeInstanceOf(Uint16Array);
    expect(at(composite.picture(), 5, 5)).toBe(9000);
  });
});
