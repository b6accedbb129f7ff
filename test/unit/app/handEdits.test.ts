import { describe, expect, it } from 'vitest';
import type { ShotDraft } from '../../../src/app/draft';
import { withEdits } from '../../../src/app/drawnPositions';
import { placePoint, placeSeed, removeSeed, setPointU, setSeeds } from '../../../src/app/edits';
import { seedsOfSlant, slantOf } from '../../../src/app/seedLine';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const draft: ShotDraft = exampleShot();
const { positions } = exampleReduction({ shot: exampleShot(), footageSha256: null }).result;

describe('a centre placed by hand', () => {
  it('keeps its uncertainty when it is moved on', () => {
    const placed = placePoint(3, [20.4, 16.1])(draft);
    const known = setPointU(3, { ux: 0.1 })(placed);
    const moved = placePoint(3, [20.5, 16.1])(known);
    expect(moved.edits.manualPoints).toEqual([{ frame: 3, x: 20.5, y: 16.1, ux: 0.1, uy: 0.5 }]);
  });

  it('is drawn where it was put before the result has caught up', () => {
    const { edits } = placePoint(3, [21.5, 16.5])(draft);
    const drawn = withEdits(positions, { ...edits, rejectedFrames: [5] });
    expect(drawn[3]).toMatchObject({ x: 21.5, y: 16.5, ux: 0.5, manual: true, used: true });
    expect(drawn[5]?.used).toBe(false);
    expect(drawn[4]).toBe(positions[4]);
    // In a frame the ball was not looked for in, too.
    const beyond = withEdits(positions, placePoint(15, [60, 16])(draft).edits);
    expect(beyond.at(-1)).toMatchObject({ frame: 15, x: 60, manual: true });
  });
});

describe('where a person says the ball is', () => {
  it('is one place a frame, in frame order, and can be taken back', () => {
    const two = placeSeed(2, [15, 16])(placeSeed(7, [40, 16])(draft));
    const moved = placeSeed(7, [41, 17])(two);
    expect(moved.edits.seeds).toEqual([
      { frame: 2, x: 15, y: 16 },
      { frame: 7, x: 41, y: 17 },
    ]);
    expect(removeSeed(2)(moved).edits.seeds.map((one) => one.frame)).toEqual([7]);
    expect(setSeeds([])(moved).edits.seeds).toEqual([]);
  });

  it('comes from the ends of a slanted line, in whole frames on that line', () => {
    // Along (3, 4) / 5 from (10, 20): 50 px along is (40, 60), 100 px is (70, 100).
    const line = { origin: [10, 20], axis: [0.6, 0.8] } as const;
    const slant = { from: { frame: 4.5, along: 50 }, to: { frame: 9, along: 95 } };
    const seeds = seedsOfSlant(line, slant, [], 20);
    // 10 px a frame: frame 5 lies at 55 px, (43, 64); frame 9 at 95 px, (67, 96).
    expect(seeds).toEqual([
      { frame: 5, x: expect.closeTo(43, 9), y: expect.closeTo(64, 9) },
      { frame: 9, x: expect.closeTo(67, 9), y: expect.closeTo(96, 9) },
    ]);
    expect(slantOf(line, seeds)).toEqual({
      from: { frame: 5, along: expect.closeTo(55, 9) },
      to: { frame: 9, along: expect.closeTo(95, 9) },
    });
  });

  it('keeps its distance from the line when an end is moved along it', () => {
    const line = { origin: [0, 10], axis: [1, 0] } as const;
    const before = [
      { frame: 2, x: 20, y: 13 },
      { frame: 8, x: 80, y: 6 },
    ];
    const slant = { from: { frame: 3, along: 25 }, to: { frame: 8, along: 80 } };
    expect(seedsOfSlant(line, slant, before, 20)).toEqual([
      { frame: 3, x: 25, y: 13 },
      { frame: 8, x: 80, y: 6 },
    ]);
  });

  it('stays within the film, and is one place where both ends lie in one frame', () => {
    const line = { origin: [0, 10], axis: [1, 0] } as const;
    const beyond = { from: { frame: -4, along: 0 }, to: { frame: 30, along: 90 } };
    expect(seedsOfSlant(line, beyond, [], 20).map((one) => one.frame)).toEqual([0, 19]);
    const flat = { from: { frame: 5.1, along: 0 }, to: { frame: 5.3, along: 90 } };
    const [only, ...more] = seedsOfSlant(line, flat, [], 20);
    expect(only?.frame).toBe(5);
    expect(more).toEqual([]);
    expect(slantOf(line, [])).toBeNull();
  });
});
