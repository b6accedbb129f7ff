import { describe, expect, test } from 'vitest';
import { measureCentre } from '../../../src/image/centre';
import { learnBrightness } from '../../../src/image/hiddenPixels';
import { learnBall } from '../../../src/image/learnBall';
import type { Background, BallModel, CentreMeasurement } from '../../../src/image/types';
import { type BallScene, expose, generator, render } from './rendering';

const SIZE = 84;
const RADIUS = 14;
const NOISE = 3;
const background: Background = {
  width: SIZE,
  height: SIZE,
  white: 255,
  noise: { readVariance: NOISE * NOISE + 1 / 12, gain: 0 },
  level: new Float32Array(SIZE * SIZE).fill(60),
};
const told: BallModel = { radius: 14.1, blur: [0, 0], region: [0, 0, SIZE, SIZE] };
const random = generator(41);

/** A film's ball is the same in all its frames: an even disc of 180 by default. */
function frameOf(scene: Partial<BallScene> & Pick<BallScene, 'centre'>) {
  const image = render({ width: SIZE, height: SIZE, radius: RADIUS, optics: 0.6, ...scene });
  return expose(image, SIZE, SIZE, NOISE, random);
}

const wobble = () => random.uniform() - 0.5;

const whole = Array.from({ length: 8 }, (): CentreMeasurement => {
  const found = measureCentre(
    frameOf({ centre: [42 + wobble(), 42 + wobble()] }),
    background,
    [43, 41],
    told,
  );
  if (!found.ok) throw new Error(found.reason.message);
  return found.value;
});
const learnt = learnBrightness(learnBall(told, whole), whole);

/** Errors of `count` frames in px and in stated standard uncertainties, both axes; how many were refused. */
function errorsOf(
  count: number,
  scene: (centre: readonly [number, number]) => Partial<BallScene>,
  hintOff = 0.5,
) {
  const px: number[] = [];
  const stated: number[] = [];
  let refused = 0;
  for (let i = 0; i < count; i++) {
    const centre = [42 + wobble(), 42 + wobble()] as const;
    const at = [centre[0] + 2 * hintOff * wobble(), centre[1] + 2 * hintOff * wobble()] as const;
    const found = measureCentre(frameOf({ ...scene(centre), centre }), background, at, learnt);
    if (!found.ok) {
      refused++;
      continue;
    }
    const { x, y, varX, varY } = found.value;
    px.push(Math.abs(x - centre[0]), Math.abs(y - centre[1]));
    stated.push(
      Math.abs(x - centre[0]) / Math.sqrt(varX),
      Math.abs(y - centre[1]) / Math.sqrt(varY),
    );
  }
  return { worst: Math.max(0, ...px), normalised: Math.max(0, ...stated), refused };
}

describe('the brightness frames agree on', () => {
  test('is not taken from frames that show it through something', () => {
    const dim = whole.slice(0, 5).map((one) => ({
      ...one,
      brightness: 120,
      varX: 9 * one.varX,
      varY: 9 * one.varY,
    }));
    expect(learnBrightness(told, [...whole, ...dim]).brightness).toEqual(learnt.brightness);
  });

  test('is that of the ball', () => {
    expect(learnt.brightness?.value).toBeCloseTo(180, -0.5);
    expect(learnt.brightness?.u).toBeLessThan(1);
  });

  test('is not told by fewer than four frames', () => {
    expect(learnBrightness(told, whole.slice(0, 3))).toBe(told);
  });
});

describe('something before the learnt ball', () => {
  // The fragment's straight edge goes through the ball within a fifth of its radius; it reaches beyond the ball
  // on the other three sides, as in the validation's films.
  test.each([40, 66, 90, 120, 150, 177, 182, 230])(
    'a fragment of grey %d over half of it',
    (grey) => {
      const { worst, normalised, refused } = errorsOf(6, ([cx, cy]) => {
        const turn = 2 * Math.PI * random.uniform();
        const cut = 0.4 * wobble() * RADIUS;
        return {
          fragment: (x, y) => {
            const along = (x - cx) * Math.cos(turn) + (y - cy) * Math.sin(turn);
            const beside = (y - cy) * Math.cos(turn) - (x - cx) * Math.sin(turn);
            const over = along > cut && along < 1.35 * RADIUS && Math.abs(beside) < 1.25 * RADIUS;
            return over ? grey : null;
          },
        };
      });
      expect(worst).toBeLessThan(0.3);
      expect(normalised).toBeLessThan(4.5);
      expect(refused).toBeLessThan(4);
    },
  );

  test('a disc as large and as bright beside it, overlapping it', () => {
    const { worst, normalised } = errorsOf(8, ([cx, cy]) => {
      const turn = 2 * Math.PI * random.uniform();
      const apart = (0.9 + 0.8 * random.uniform()) * RADIUS;
      const x1 = cx + apart * Math.cos(turn);
      const y1 = cy + apart * Math.sin(turn);
      return { fragment: (x, y) => (Math.hypot(x - x1, y - y1) < RADIUS ? 180 : null) };
    });
    expect(worst).toBeLessThan(0.4);
    expect(normalised).toBeLessThan(5);
  });

  test('a disc alone where the ball is not: refused', () => {
    const found = measureCentre(frameOf({ centre: [50, 42] }), background, [42, 42], learnt);
    expect(found).toMatchObject({ ok: false });
  });

  test('a disc of another brightness in its place: refused', () => {
    const frame = frameOf({ centre: [42, 42], shade: () => 110 });
    expect(measureCentre(frame, background, [42, 42], learnt)).toMatchObject({ ok: false });
  });

  test('half inside a clear tube that takes a quarter of the light', () => {
    const { worst, normalised } = errorsOf(8, ([cx, cy]) => {
      const edge = cx + 0.5 * wobble() * RADIUS;
      return {
        fragment: (x, y) =>
          x < edge && Math.hypot(x - cx, y - cy) < RADIUS ? 60 + 0.75 * 120 : null,
      };
    });
    expect(worst).toBeLessThan(0.3);
    expect(normalised).toBeLessThan(4.5);
  });
});
