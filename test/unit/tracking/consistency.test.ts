import { describe, expect, test } from 'vitest';
import { type MeasuredPlace, offPath } from '../../../src/tracking/consistency';
import { normalStream } from '../noise';

const INTERVAL = 1 / 12_000;
const RADIUS = 20;
const STEP = 12;
/** Share of the speed lost a pixel. */
const DRAG = 1.5e-4;
const axis = [Math.cos(0.03), Math.sin(0.03)] as const;

/** Where the ball is `k` frames after frame 0: drag along the axis, a little sag across it. */
const way = (k: number, drag: number) => Math.log1p(drag * STEP * k) / drag;
const truth = (k: number, drag = DRAG): [number, number] => [
  60 + way(k, drag) * axis[0],
  80 + way(k, drag) * axis[1] + 4e-4 * k * k,
];

function places(count: number, sigma: number, seed: number, drag = DRAG): MeasuredPlace[] {
  const normal = normalStream(seed);
  return Array.from({ length: count }, (_, frame) => {
    const [x, y] = truth(frame, drag);
    return {
      frame,
      time: frame * INTERVAL,
      x: x + sigma * normal(),
      y: y + sigma * normal(),
      varX: sigma * sigma,
      varY: sigma * sigma,
      covXY: 0,
      expected: [x + 1, y - 1],
    };
  });
}

const moved = (all: MeasuredPlace[], by: ReadonlyMap<number, readonly [number, number]>) =>
  all.map((place) => {
    const [dx, dy] = by.get(place.frame) ?? [0, 0];
    return { ...place, x: place.x + dx, y: place.y + dy };
  });

const off = (all: readonly MeasuredPlace[], muzzleTime: number | null = null) =>
  [...offPath(all, axis, muzzleTime, RADIUS).keys()].sort((a, b) => a - b);

describe('centres off the path of the others', () => {
  test('another thing in nearly half of the frames: the larger part that agrees stands', () => {
    const all = places(24, 0.05, 8).map((place, i) =>
      i < 14 ? place : { ...place, x: place.x - 0.55 * RADIUS - 0.2 * STEP * (i - 14) },
    );
    // The track ran between the two.
    const between = all.map((place, i) => ({
      ...place,
      expected: [place.x + (i < 14 ? -8 : 8), place.y] as const,
    }));
    expect(off(between)).toEqual(Array.from({ length: 10 }, (_, i) => 14 + i));
  });

  test.each([
    ['across the flight', [0, 14.6]],
    ['along it', [-11, 0]],
    ['by half a pixel', [0.35, 0.35]],
  ] as const)('one is refused: %s', (_, by) => {
    expect(off(moved(places(40, 0.02, 3), new Map([[17, by]])))).toEqual([17]);
  });

  test('the first and the last are judged as well', () => {
    const wrong = new Map<number, [number, number]>([
      [0, [3, 0]],
      [39, [0, -2]],
    ]);
    expect(off(moved(places(40, 0.02, 4), wrong))).toEqual([0, 39]);
  });

  test('a third of them on a fragment that overtakes the ball', () => {
    const wrong = new Map(
      Array.from({ length: 12 }, (_, i): [number, [number, number]] => [14 + i, [4 + 2 * i, 1]]),
    );
    expect(off(moved(places(40, 0.05, 5), wrong))).toEqual([...wrong.keys()]);
  });

  test('most of them, where all of those are on its shadow and not where it was followed', () => {
    const wrong = new Map(
      Array.from({ length: 26 }, (_, i): [number, [number, number]] => [4 + i, [-12, 9]]),
    );
    expect(off(moved(places(40, 0.05, 14), wrong))).toEqual([...wrong.keys()]);
  });

  test('an uncertain one that is grossly off both ways', () => {
    const all = moved(places(40, 0.02, 7), new Map([[0, [0.85, 0.7]]])).map((place) =>
      place.frame === 0 ? { ...place, varX: 0.09, varY: 0.053 } : place,
    );
    expect(off(all)).toEqual([0]);
  });

  test('the reason tells the frame and how far', () => {
    const found = offPath(moved(places(40, 0.02, 6), new Map([[9, [0, 5]]])), axis, null, RADIUS);
    expect(found.get(9)?.code).toBe('offPath');
    expect(found.get(9)?.message).toMatch(/frame 9 .* 5\.0 px .* across/);
  });
});

describe('good centres stay', () => {
  test.each([0.15, 0.5])(
    'of 12 000 with noise as stated (%f px), fewer than 3 in a thousand are refused',
    (sigma) => {
      let refused = 0;
      for (let seed = 0; seed < 300; seed++) refused += off(places(40, sigma, 100 + seed)).length;
      expect(refused).toBeLessThan(36);
    },
  );

  test('scatter twice as large as stated is not held against any', () => {
    const all = places(60, 0.3, 8).map((place) => ({ ...place, varX: 0.02, varY: 0.02 }));
    expect(off(all)).toEqual([]);
  });

  test('small errors many standard deviations large are left to the fit', () => {
    expect(off(moved(places(40, 0.01, 9), new Map([[20, [0.2, 0]]])))).toEqual([]);
  });

  test('a ball still pushed up to the muzzle', () => {
    const all = places(40, 0.03, 10).map((place) => {
      const before = Math.max(0, 14 - place.frame);
      const x = place.x + 0.08 * before * before;
      return { ...place, x, expected: [x + 2, place.y] as const };
    });
    expect(off(all, 14 * INTERVAL)).toEqual([]);
  });

  test('a very light ball, whose drag dwindles as it slows', () => {
    expect(off(places(40, 0.03, 12, 8e-4))).toEqual([]);
  });

  test('frames lost, which the path shows as a jump of whole steps, are left to be told of', () => {
    const after = places(40, 0.03, 13).filter(({ frame }) => frame < 26 || frame > 27);
    const lost = after.map((place, i) => ({ ...place, frame: i, time: i * INTERVAL }));
    expect(off(lost)).toEqual([]);
    // Half a step is no slip of time.
    expect(off(moved(lost, new Map([[20, [STEP / 2, 0]]])))).toEqual([20]);
    // Another thing, slower, falls back by ever other numbers of steps, some of them whole by chance.
    const slower = places(40, 0.05, 9).map((place, i) =>
      i < 26 ? place : moved([place], new Map([[i, [-0.25 * STEP * (i - 18), 0]]]))[0],
    ) as MeasuredPlace[];
    expect(off(slower)).toEqual(Array.from({ length: 14 }, (_, i) => 26 + i));
  });

  test('too few to tell', () => {
    expect(off(moved(places(5, 0.02, 11), new Map([[2, [0, 6]]])))).toEqual([]);
  });
});
