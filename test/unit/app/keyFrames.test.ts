import { describe, expect, it } from 'vitest';
import { keyFramesOf, muzzleRect } from '../../../src/app/keyFrames';
import { buildClock } from '../../../src/clock/clock';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const shot = exampleShot();
const { result } = exampleReduction({ shot, footageSha256: null });
const built = buildClock(
  shot.timing,
  { width: 64, height: 32, frameCount: 20, playbackRate: 30 },
  null,
);
const clock = built.ok ? built.value : null;
const none = { unavailable: { code: 'x', message: 'None.' } };

describe('frames that show the result', () => {
  it('are the two around the burst and the one nearest to the exit, with the ball where it was found', () => {
    // Exit at 250 µs is the third frame of 12 000 a second; radius 15 mm at 0.3333 mm a pixel is 45 px.
    const frames = keyFramesOf(result, shot, clock, 20);
    expect(frames.map(({ kind, frame }) => [kind, frame])).toEqual([
      ['whole', 1],
      ['open', 2],
      ['exit', 3],
    ]);
    expect(frames[2]?.ball?.centre).toEqual([20, 16]);
    expect(frames[2]?.ball?.radius).toBeCloseTo(45.0, 1);
  });

  it('are left out where the moment is not known or not on the film', () => {
    const unburst = { ...result, sealBurst: { ...none, bounds: [null, null] as const } };
    expect(keyFramesOf(unburst, shot, clock, 20).map(({ kind }) => kind)).toEqual(['exit']);
    expect(keyFramesOf({ ...unburst, exitTime: none }, shot, clock, 20)).toEqual([]);
    expect(keyFramesOf(unburst, shot, null, 20)).toEqual([]);
    expect(keyFramesOf(unburst, shot, clock, 3)).toEqual([]);
    const unseen = { ...unburst, positions: [] };
    expect(keyFramesOf(unseen, shot, clock, 20)[0]?.ball).toBeNull();
  });
});

describe('the part around the muzzle', () => {
  it('is ten radii wide where the film is large enough', () => {
    const [x, y, width, height] = muzzleRect(
      result,
      { ...shot, muzzle: { point: [500, 200], u: 0.5, axis: null } },
      { width: 1024, height: 512 },
    );
    expect([width, height]).toEqual([450, 270]);
    expect([x + width / 2, y + height / 2]).toEqual([500, 200]);
  });

  it('stays within the film', () => {
    expect(muzzleRect(result, shot, { width: 64, height: 32 })).toEqual([0, 0, 64, 32]);
    const corner = muzzleRect(
      result,
      { ...shot, muzzle: { point: [1020, 4], u: 0.5, axis: null } },
      { width: 1024, height: 512 },
    );
    expect(corner).toEqual([574, 0, 450, 270]);
    expect(muzzleRect(result, { ...shot, muzzle: null }, { width: 64, height: 32 })).toEqual([
      0, 0, 64, 32,
    ]);
  });
});
