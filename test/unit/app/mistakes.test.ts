import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as expected from '../../../scripts/mistakes/expected';
import { foundSize, MISTAKES, type Mistake, mistakes } from '../../../src/app/mistakes';

const of = (name: string): Mistake => {
  const one = mistakes.find((mistake) => mistake.name === name);
  if (one === undefined) throw new Error(`no mistake ${name}`);
  return one;
};

/** How well the size of an error is known: both sides' own parts; a scale or click they share falls out. */
function sizeU({ of: quantity, right, wrong }: Mistake): number {
  return quantity === 'exitTime'
    ? Math.hypot(right.exitTime.u, wrong.exitTime.u)
    : Math.hypot(right.speed.u / right.speed.value, wrong.speed.u / wrong.speed.value);
}

describe('the sizes of mistakes', () => {
  it('are there for every mistake, with its pictures', () => {
    expect(mistakes.map(({ name }) => name)).toEqual([...MISTAKES]);
    for (const { pictures } of mistakes) {
      expect(pictures.length).toBeGreaterThan(0);
      for (const { file } of pictures)
        expect(existsSync(`sample-clips/mistakes/${file}`)).toBe(true);
    }
  });

  it.each(['wrongRate', 'lostFrames', 'wrongPlane', 'parallax', 'rollingShutter'])(
    '%s: what came out of the rendered film is what the formula expects, and more than chance',
    (name) => {
      const one = of(name);
      const u = sizeU(one);
      expect(Math.abs(foundSize(one) - one.expected)).toBeLessThan(2 * u);
      expect(Math.abs(one.expected)).toBeGreaterThan(3 * u);
    },
  );

  it.each(['wrongRate', 'lostFrames', 'wrongPlane', 'rollingShutter'])(
    '%s: the right way holds the truth, the wrong one does not',
    (name) => {
      const { right, wrong, truth } = of(name);
      expect(Math.abs(right.speed.value - truth.speed)).toBeLessThan(2 * right.speed.u);
      expect(Math.abs(wrong.speed.value - truth.speed)).toBeGreaterThan(3 * wrong.speed.u);
    },
  );

  it('parallax moves the exit and leaves the speed', () => {
    const { right, wrong, truth } = of('parallax');
    expect(Math.abs(right.exitTime.value - truth.exitTime)).toBeLessThan(2 * right.exitTime.u);
    expect(Math.abs(wrong.exitTime.value - truth.exitTime)).toBeGreaterThan(5 * wrong.exitTime.u);
    expect(Math.abs(wrong.speed.value - right.speed.value)).toBeLessThan(right.speed.u);
  });

  it('blur shifts no speed, but every centre is known the less, at least as pixel noise alone has it', () => {
    const one = of('blur');
    const { right, wrong } = one;
    expect(Math.abs(wrong.speed.value - right.speed.value)).toBeLessThan(
      2 * Math.hypot(right.speed.u, wrong.speed.u),
    );
    expect(foundSize(one)).toBeGreaterThan(one.expected);
    expect(wrong.speed.u).toBeGreaterThan(right.speed.u);
  });
});

describe('the closed forms', () => {
  it('rate: a clip played at 30 of 12 000 frames/s is 400 times too slow', () => {
    expect(expected.wrongRate(30, 12_000) + 1).toBeCloseTo(1 / 400, 12);
  });

  it('lost frames: the slope of a step fitted with a line, worked out by its sums', () => {
    const places = Array.from({ length: 17 }, (_, i) => i + (i >= 7 ? 2 : 0));
    const middle = 8;
    const mean = places.reduce((sum, x) => sum + x, 0) / 17;
    let [along, square] = [0, 0];
    for (const [i, x] of places.entries()) {
      along += (i - middle) * (x - mean);
      square += (i - middle) ** 2;
    }
    expect(expected.lostFrames(7, 10, 2)).toBeCloseTo(along / square - 1, 12);
  });

  it('rolling shutter: a ball followed from line to line', () => {
    // 7000 px/s, 8 µs a line, read against the flight: frames 1/240 s apart see it at these places.
    const [speed, line, frame] = [7000, 8e-6, 1 / 240];
    const seen = (i: number) => {
      // Line x is read at i frames plus (480 - x) lines.
      let x = 0;
      for (let k = 0; k < 50; k++) x = speed * (i * frame + (480 - x) * line);
      return x;
    };
    const apparent = (seen(1) - seen(0)) / frame;
    expect(expected.rollingShutter(speed, line)).toBeCloseTo(apparent / speed - 1, 9);
  });

  it('blur: no growth without blur, as the root of the length where that is long', () => {
    expect(expected.blurGrowth(1e-3, 0.7)).toBeCloseTo(1, 5);
    // Long against the edge: sqrt(length / (2 sigma sqrt(pi))).
    const [length, sigma] = [1000, 0.7];
    const limit = Math.sqrt(length / (2 * sigma * Math.sqrt(Math.PI)));
    expect(expected.blurGrowth(length, sigma) / limit).toBeCloseTo(1, 3);
  });

  it('planes: a mark 60 mm behind, 100 mm aside, seen from 1.2 m', () => {
    expect(expected.wrongPlane(0.06, 1.2)).toBeCloseTo(0.05, 12);
    expect(expected.parallax(0.1, 0.06, 1.2)).toBeCloseTo(0.1 * (1 - 1.2 / 1.26), 12);
  });
});
