import { describe, expect, test } from 'vitest';
import { unsure } from '../../../src/tracking/unsure';

const RADIUS = 12;
const centres = (us: readonly number[]) =>
  us.map((u, frame) => ({ frame, varX: (u * u) / 2, varY: (u * u) / 2 }));
const refused = (us: readonly number[]) => [...unsure(centres(us), RADIUS).keys()];

describe('centres too uncertain beside the others', () => {
  test('one far less sure is refused, and told of', () => {
    const us = [0.1, 0.12, 0.5, 0.1, 0.11];
    expect(refused(us)).toEqual([2]);
    expect(unsure(centres(us), RADIUS).get(2)).toEqual({
      code: 'tooUncertain',
      message: 'In frame 2 the centre is known to 0.50 px only; in half of the frames to 0.11 px.',
      values: { form: 'some', frame: 2, u: '0.50', usual: '0.11' },
    });
  });

  test('a small part of the radius is sure enough, however sharp the others', () => {
    expect(refused([0.01, 0.01, 0.3, 0.01, 0.01])).toEqual([]);
  });

  test('where all are as uncertain none is', () => {
    expect(refused([0.3, 0.35, 0.4, 0.3, 0.45])).toEqual([]);
  });

  test('beyond a twenty-fifth of the radius every one is, and told why', () => {
    const us = [0.5, 0.6, 0.47, 0.52, 0.7];
    expect(refused(us)).toEqual([0, 1, 3, 4]);
    expect(unsure(centres(us), RADIUS).get(1)?.message).toBe(
      'In frame 1 and most others the centre is known to 0.60 px only: a reflection, a shadow or mist at the ball hides where it ends.',
    );
  });

  test('both directions count together', () => {
    const one = { frame: 7, varX: 0.3 ** 2, varY: 0.3 ** 2 };
    const others = centres([0.1, 0.1, 0.1]);
    expect([...unsure([...others, one], RADIUS).keys()]).toEqual([7]);
    expect([...unsure([...others, { ...one, varY: 0 }], RADIUS).keys()]).toEqual([]);
  });

  test('none, of none', () => {
    expect(refused([])).toEqual([]);
  });
});
