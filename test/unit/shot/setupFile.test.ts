import { describe, expect, it } from 'vitest';
import { parseSetup, setupOf, validateSetup } from '../../../src/shot/setupFile';
import { exampleShot } from '../../fixtures/shot';

const shot = exampleShot();
const muzzle = shot.muzzle ?? { point: [5, 16] as const, u: 0.5, axis: null };
const about = {
  ...{ id: 's-1', name: 'Bench, long lens', frame: { width: 1024, height: 256 } },
  scene: {
    ...{ shotName: '2031-04-17 C', footageSha256: null },
    fingerprint: { width: 20, height: 17, block: 8, levels: [1, 2, 3, 4] },
  },
};
const setup = setupOf({ ...shot, muzzle }, about);
const problemOf = (data: unknown) => {
  const outcome = validateSetup(data);
  return outcome.ok ? null : `${outcome.reason.code}: ${outcome.reason.message}`;
};

describe('a setup file', () => {
  it('comes back as it was written, without what is a clip’s own', () => {
    expect(parseSetup(JSON.stringify(setup))).toEqual({ ok: true, value: setup });
    expect(setup.timing).not.toHaveProperty('droppedFrames');
    expect(setup.scale).toEqual(shot.scale);
  });

  it.each([
    ['not json', '{', 'notJson'],
    ['a shot file', '{"format":"exitframe-shot"}', 'notSetup'],
    ['a newer one', JSON.stringify({ ...setup, version: 2 }), 'newerSetup'],
    ['an unknown key', JSON.stringify({ ...setup, wind: 3 }), 'invalidSetup'],
  ])('is refused: %s', (_, text, code) => {
    expect(parseSetup(text)).toMatchObject({ ok: false, reason: { code } });
  });

  it('is refused where a shot with it would be', () => {
    const timing = { ...setup.timing, exposure: { value: 1, u: 0 } };
    expect(problemOf({ ...setup, timing })).toMatch(/invalidSetup: .*longer than a frame/);
    const scale = { ...setup.scale, lengths: [], plane: null };
    expect(problemOf({ ...setup, scale })).toMatch(/neither a known length nor a plane/);
    expect(problemOf({ ...setup, muzzle: null })).toMatch(/muzzle/);
  });

  it('is refused where its scene has another number of squares than its size', () => {
    const fingerprint = { ...about.scene.fingerprint, levels: [1, 2, 3] };
    const scene = { ...about.scene, fingerprint };
    expect(problemOf({ ...setup, scene })).toMatch(/3 values for 4 squares/);
  });
});
