import { describe, expect, it } from 'vitest';
import { frameStates, framesOf, placeAmong } from '../../../src/app/frameStates';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const { result } = exampleReduction({
  shot: {
    ...exampleShot(),
    edits: {
      rejectedFrames: [4],
      manualPoints: [{ frame: 6, x: 35, y: 16, ux: 0.5, uy: 0.5 }],
      seeds: [],
    },
  },
  footageSha256: null,
});
const refused = { code: 'noBall', message: 'No ball.' };
const positions = result.positions.map((one) =>
  one.frame === 2 ? { ...one, used: false, why: refused } : one,
);

describe('how frames stand', () => {
  it('tells used, hand-placed, refused, rejected and outside apart, within the film', () => {
    const states = frameStates(positions, 12);
    expect(states.map(({ frame }) => frame)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    const marks = Object.fromEntries(states.map(({ frame, mark }) => [frame, mark]));
    expect(marks).toMatchObject({
      1: 'used',
      2: 'refused',
      4: 'rejected',
      6: 'byHand',
      10: 'outside',
      11: 'outside',
    });
    expect(states[2]?.why).toEqual(refused);
    expect(states[6]?.why).toBeNull();
  });

  it('has nothing to show where no frame was looked at', () => {
    expect(frameStates([], 12)).toEqual([]);
  });
});

describe('going through frames', () => {
  it('takes those left out in their order, the used ones by how far off they lie', () => {
    expect(framesOf('leftOut', { ...result, positions })).toEqual([2, 4]);
    if (!('model' in result.fit)) throw new Error('no fit');
    const residuals = result.fit.residuals.map((_, i) => (i === 3 ? -9e-5 : i === 7 ? 5e-5 : 1e-6));
    const off = { ...result, fit: { ...result.fit, residuals } };
    // Frame 4 is rejected: residual 3 is frame 3's, residual 7 frame 8's.
    expect(framesOf('poorestFirst', off).slice(0, 2)).toEqual([3, 8]);
  });

  it('knows what comes before and after, from outside too', () => {
    expect(placeAmong([2, 4, 9], 4, true)).toEqual({ index: 1, previous: 2, next: 9 });
    expect(placeAmong([2, 4, 9], 5, true)).toEqual({ index: null, previous: 4, next: 9 });
    expect(placeAmong([2, 4, 9], 9, true)).toEqual({ index: 2, previous: 4, next: null });
    // Out of order there is no nearer side: it begins with the first.
    expect(placeAmong([8, 3, 5], 4, false)).toEqual({ index: null, previous: null, next: 8 });
    expect(placeAmong([], 4, true)).toEqual({ index: null, previous: null, next: null });
  });
});
