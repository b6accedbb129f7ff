import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type OwnShot, ownNumbers } from '../../../src/app/ownNumbers';
import { buildClock } from '../../../src/clock/clock';
import { determineScale } from '../../../src/geometry/scale';
import { parseShot } from '../../../src/shot/parse';
import { validateResult } from '../../../src/shot/parseResult';

const FILES = 'sample-clips/series/2031-05-06-A';

/** A shot of the rendered series with its result, as the page holds them. */
function seriesShot(): OwnShot & { readonly draft: NonNullable<OwnShot['draft']> } {
  const shot = parseShot(readFileSync(`${FILES}.shot.json`, 'utf8'));
  const result = validateResult(JSON.parse(readFileSync(`${FILES}.result.json`, 'utf8')));
  if (!shot.ok || !result.ok || shot.value.muzzle === null) throw new Error('unreadable');
  const frame = { width: 1024, height: 256, pixelAspect: 1, frameCount: 140, playbackRate: 30 };
  return {
    draft: shot.value,
    frameCount: 140,
    clock: buildClock(shot.value.timing, frame, null),
    scale: determineScale(shot.value.scale, frame, shot.value.muzzle.point),
    result: result.value,
  };
}

describe('the numbers of a shot', () => {
  it('are those stated and found, and what follows from them', () => {
    const shot = seriesShot();
    const { draft, result } = shot;
    const own = ownNumbers(shot);
    const rate = draft.timing.recordingRate;
    if (rate === null || result === null || !('value' in result.exitVelocity)) throw new Error();
    expect(own.interval?.value).toBeCloseTo(1 / rate.value, 15);
    expect((own.interval?.u ?? 0) / (own.interval?.value ?? 1)).toBeCloseTo(
      rate.u / rate.value,
      12,
    );
    expect(own.duration?.value).toBeCloseTo(139 / rate.value, 12);
    expect(own.rate?.value).toBeCloseTo(rate.value, 8);

    const [from, to] = [draft.scale.lengths[0]?.from, draft.scale.lengths[0]?.to];
    if (from === undefined || to === undefined) throw new Error();
    const pixels = Math.hypot(to[0] - from[0], to[1] - from[1]);
    expect(own.lengthPixels?.value).toBeCloseTo(pixels, 9);
    expect(own.oneScale?.value).toBeCloseTo(0.2 / pixels, 12);

    const v = result.exitVelocity.value;
    expect(own.exitVelocity).toEqual({ value: v, u: result.exitVelocity.u });
    const exposure = draft.timing.exposure?.value ?? 0;
    expect(own.blur?.value).toBeCloseTo((v * exposure) / result.scale.value, 9);
    expect((own.centre?.value ?? 0) / (own.centrePixels?.value ?? 1)).toBeCloseTo(
      result.scale.value,
      12,
    );
    // The ball slows: between first and last frame it is slower than at the muzzle, by a few percent.
    expect(own.meanSpeed?.value).toBeLessThan(v);
    expect(own.meanSpeed?.value).toBeGreaterThan(0.9 * v);
    // Whole outside pressure along the whole barrel: more than any such shot.
    const [p, d] = [draft.air.pressure.value, draft.launcher?.boreDiameter.value ?? 0];
    const work = p * (Math.PI / 4) * d ** 2 * (draft.launcher?.barrelLength.value ?? 0);
    expect(own.mostSpeed?.value).toBeCloseTo(Math.sqrt((2 * work) / draft.ball.mass.value), 9);
    expect(own.mostSpeed?.value).toBeGreaterThan(v);
  });

  it('are all missing where nothing is open', () => {
    const none = ownNumbers({
      draft: null,
      frameCount: null,
      clock: null,
      scale: null,
      result: null,
    });
    expect(new Set(Object.values(none))).toEqual(new Set([null]));
  });

  it('are missing, never no number, whatever their inputs hold', () => {
    const odd = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 0, -1, 1e-320, 1e308);
    fc.assert(
      fc.property(odd, odd, odd, odd, (rate, scale, u, exposure) => {
        const shot = seriesShot();
        const { draft, result } = shot;
        if (result === null) throw new Error();
        const own = ownNumbers({
          ...shot,
          frameCount: 140,
          draft: {
            ...draft,
            timing: { ...draft.timing, exposure: { value: exposure, u } },
            ball: { ...draft.ball, mass: { value: exposure, u } },
          },
          clock: { ok: true, value: { frameInterval: 1 / rate, rateRelativeU: u } },
          scale: {
            ok: true,
            value: { value: scale, u, lengths: [{ value: scale, u, pixels: 1 }] },
          },
          result: { ...result, scale: { value: scale, u } },
        });
        for (const one of Object.values(own)) {
          if (one === null) continue;
          expect(Number.isFinite(one.value) && Number.isFinite(one.u)).toBe(true);
        }
      }),
    );
  });
});
