import { describe, expect, test } from 'vitest';
import { failure, type Outcome, success } from '../../../src/core/reason';
import type { CentreMeasurement } from '../../../src/image/types';
import { type FrameOnPath, findBreakUp } from '../../../src/tracking/breakUp';

const seen = (visible = 1, contrast = 100, u = 0.01): Outcome<CentreMeasurement> =>
  success({
    x: 0,
    y: 0,
    varX: u * u,
    varY: u * u,
    covXY: 0,
    radius: { value: 20, u: 0.05 },
    visible,
    contrast,
    saturated: 0,
  });
const refused = failure('noBall', 'No outline.');

type Shown = Omit<FrameOnPath, 'frame'>;

const whole: Shown = { centre: seen(), inView: 1, likeness: 0.9 };
const pieces: Shown = { centre: refused, inView: 1, likeness: 0.2 };
const nothing: Shown = { centre: refused, inView: 1, likeness: null };

/** Twelve frames of a whole ball from frame 100 on, and what comes after. */
const film = (...after: readonly Shown[]): FrameOnPath[] =>
  [...Array.from({ length: 12 }, () => whole), ...after].map((one, i) => ({
    ...one,
    frame: 100 + i,
  }));

describe('a ball that breaks up', () => {
  test('is whole up to the frame before', () => {
    const found = findBreakUp(film(pieces, pieces, nothing, pieces, pieces));
    expect(found?.frame).toBe(112);
    expect(found?.reason.code).toBe('ballBroke');
    expect(found?.reason.message).toContain('up to frame 111');
  });

  test.each<[string, Shown]>([
    ['darker', { ...whole, centre: seen(1, 45) }],
    ['not as round', { ...whole, likeness: 0.4 }],
  ])('a first broken frame that still passes for a disc, but %s, is not the ball', (_, mottled) => {
    expect(findBreakUp(film(mottled, pieces, pieces, pieces))?.frame).toBe(112);
  });

  test('pieces through which a disc can still be laid, badly, are pieces', () => {
    const laid = { ...pieces, centre: seen(0.6, 100, 0.5) };
    expect(findBreakUp(film(laid, laid, laid, pieces, pieces))?.frame).toBe(112);
  });

  test('mist before which the ball was known less well does not hide it', () => {
    const misty = { ...whole, centre: seen(1, 100, 0.2) };
    const laid = { ...pieces, centre: seen(0.8, 100, 0.5) };
    const early = film(laid, pieces, pieces, pieces).map((one, i) =>
      i < 7 ? { ...one, ...misty } : one,
    );
    expect(findBreakUp(early)?.frame).toBe(112);
  });

  test('a ball that something passed before just then breaks up as well', () => {
    const beside = { ...whole, centre: seen(0.7) };
    const found = findBreakUp(film(beside, beside, beside, beside, pieces, pieces, pieces));
    expect(found?.frame).toBe(116);
  });

  test('a shard that passes for the ball once does not put the break off', () => {
    const shard = { ...whole, likeness: 0.3 };
    const after = [pieces, pieces, pieces, shard, pieces, pieces, pieces, pieces];
    expect(findBreakUp(film(...after))?.frame).toBe(112);
  });

  test('a ball that the edge of the picture always cuts breaks up as well', () => {
    const cut = film(pieces, pieces, pieces, pieces).map((one) => ({ ...one, inView: 0.6 }));
    expect(findBreakUp(cut)?.frame).toBe(112);
  });
});

describe('no break-up', () => {
  const covered = [0.9, 0.75, 0.6, 0.45].map(
    (visible): Shown => ({ ...whole, centre: seen(visible), likeness: 0.8 * visible }),
  );
  const slowly = Array.from({ length: 14 }, (_, i) => 0.97 - 0.04 * i).map(
    (visible): Shown => ({ ...whole, centre: seen(visible), likeness: 0.9 * visible }),
  );
  test.each<[string, readonly Shown[]]>([
    ['the ball stays whole', [whole, whole]],
    ['a fragment or mist hides it for some frames', [pieces, pieces, pieces, pieces, whole, whole]],
    [
      'mist hides it for many frames',
      [...Array.from({ length: 6 }, () => pieces), ...Array.from({ length: 6 }, () => whole)],
    ],
    ['it vanishes behind something', [nothing, nothing, nothing, nothing, nothing]],
    ['something covers it little by little', [...covered, pieces, pieces, pieces, pieces, pieces]],
    ['something covers it slowly', [...slowly, pieces, pieces, pieces, pieces, pieces]],
    ['it leaves the picture', [0.9, 0.6, 0.4, 0.1].map((inView) => ({ ...pieces, inView }))],
    [
      'it is stopped and stands there whole',
      Array.from({ length: 5 }, () => ({ ...pieces, likeness: 0.88 })),
    ],
    ['only two frames follow', [pieces, pieces]],
  ])('%s', (_, after) => {
    expect(findBreakUp(film(...after))).toBeNull();
  });
});
