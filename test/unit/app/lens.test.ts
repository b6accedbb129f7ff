import { describe, expect, it } from 'vitest';
import { cornerReach, holdsForFilm, lensOfCalibration, straightLens } from '../../../src/app/lens';
import { infoOf } from '../../fixtures/crew';

const film = { ...infoOf('clip.mp4', 20), width: 640, height: 480 };

describe('a lens found on other pictures', () => {
  it('holds for a film of their size', () => {
    expect(holdsForFilm({ width: 640, height: 480 }, film)).toEqual({ ok: true, value: true });
  });

  it.each([
    ['picturesOtherSize', { width: 640, height: 481 }, film],
    ['picturesOtherSize', { width: 480, height: 640 }, film],
    ['pixelsOblong', film, { ...film, pixelAspect: 1.1 }],
  ])('is refused, %s', (code, pictures, of) => {
    expect(holdsForFilm(pictures, of)).toMatchObject({ ok: false, reason: { code } });
  });
});

it('leaves of a calibration what a shot states', () => {
  const lens = straightLens(film);
  expect(lensOfCalibration({ ...lens, rms: 0.2, parts: [] })).toEqual(lens);
});

it('begins typing with a lens that moves nothing', () => {
  const reach = cornerReach(straightLens(film), film);
  if (!reach.ok) throw new Error(reach.reason.message);
  expect(Math.abs(reach.value.value)).toBeLessThan(1e-9);
  expect(reach.value.u).toBe(0);
});
