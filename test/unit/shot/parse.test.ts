import { describe, expect, it } from 'vitest';
import { parseShot, validateShot } from '../../../src/shot/parse';
import type { ShotInput } from '../../../src/shot/schema';

const shot = (change: Partial<Record<keyof ShotInput, unknown>> = {}): unknown => ({
  format: 'exitframe-shot',
  version: 5,
  name: '2031-04-17 C',
  footage: { path: 'clip.mp4', sha256: null },
  timing: { source: 'recordingRate', recordingRate: { value: 12000, u: 0.6 } },
  scale: { lengths: [{ from: [0, 0], to: [600, 0], length: 0.2, u: 5e-5 }] },
  ...change,
});
const refusal = (data: unknown) => {
  const parsed = validateShot(data);
  return parsed.ok ? { code: 'accepted', message: '' } : parsed.reason;
};

describe('parseShot', () => {
  it('fills in every default', () => {
    const parsed = parseShot(JSON.stringify(shot()));
    if (!parsed.ok) throw new Error(parsed.reason.message);
    expect(parsed.value).toMatchObject({
      muzzle: null,
      timing: { exposure: null, readout: { direction: 'down', lineTime: { value: 0 } } },
      scale: { cameraDistance: null, lengths: [{ endpointU: 0.3, depthOffset: 0 }] },
      ball: { diameter: { value: 0.03 } },
      coverage: 0.95,
      seed: 1,
    });
  });

  it('gives back what it was given once defaults are in', () => {
    const first = parseShot(JSON.stringify(shot()));
    const second = parseShot(JSON.stringify(first.ok && first.value));
    expect(second).toEqual(first);
  });

  it('reads headerless footage and its fields as stated, and refuses a layout that cannot be', () => {
    const layout = { width: 64, height: 48, bits: 12, byteOrder: 'big', skip: 32, gap: 6 };
    const footageWith = (raw: unknown) => ({
      path: 'clip.raw',
      sha256: null,
      reading: { raw, fields: 'topFirst' },
    });
    const stated = validateShot(shot({ footage: footageWith(layout) }));
    expect(stated.ok && stated.value.footage).toEqual(footageWith(layout));
    for (const wrong of [{ width: 0 }, { bits: 11 }, { skip: -1 }, { gap: 0.5 }]) {
      expect(refusal(shot({ footage: footageWith({ ...layout, ...wrong }) }))).toMatchObject({
        code: 'invalidShot',
        message: expect.stringContaining('footage'),
      });
    }
  });

  it('names an unknown key by its path', () => {
    const reason = refusal(
      shot({ timing: { source: 'containerTimestamps', recordingRate: null, gain: 2 } }),
    );
    expect(reason).toMatchObject({
      code: 'invalidShot',
      message: expect.stringContaining('"timing.gain"'),
    });
  });

  it.each([1, 2, 3, 4])('reads a file of version %d as one of this version', (version) => {
    const sound = { offset: { value: 0, u: 0 }, microphone: { distance: { value: 1, u: 0.01 } } };
    const launcher = {
      boreDiameter: { value: 0.031, u: 5e-5 },
      barrelLength: { value: 1.4, u: 1e-3 },
    };
    const old = validateShot(shot({ version, sound, launcher }));
    expect(old.ok && old.value).toMatchObject({
      version: 5,
      // Such a file counts woven frames.
      footage: { reading: { raw: null, fields: 'whole' } },
      edits: { seeds: [] },
      sound: { microphone: { distance: { value: 1, u: 0.01 }, toBackstop: null } },
      launcher: { ...launcher, startPosition: null, gapDischarge: { value: 0.7 } },
    });
  });

  it('refuses distances of microphone and backstop that make no triangle', () => {
    const soundAt = (toBackstop: number, backstopDistance: object | null) => ({
      sound: {
        offset: { value: 0, u: 0 },
        microphone: {
          distance: { value: 1, u: 0.01 },
          toBackstop: { value: toBackstop, u: 0.01 },
        },
        backstopDistance,
      },
    });
    const backstop = { value: 3, u: 0.01 };
    for (const side of [2, 2.5, 4.02]) {
      expect(refusal(shot(soundAt(side, backstop))).code).toBe('accepted');
    }
    for (const side of [1.9, 4.1]) {
      expect(refusal(shot(soundAt(side, backstop)))).toMatchObject({
        code: 'invalidShot',
        message: expect.stringContaining('"sound.microphone.toBackstop.value"'),
      });
    }
    expect(refusal(shot(soundAt(2, null))).message).toContain('without "sound.backstopDistance"');
  });

  it('refuses a newer version with what to do', () => {
    expect(refusal(shot({ version: 6 }))).toMatchObject({
      code: 'newerVersion',
      message: expect.stringContaining('version 6'),
    });
  });

  it.each([
    [{ value: 0, u: 1 }],
    [{ value: -240, u: 1 }],
    [{ value: 'fast', u: 1 }],
    [{ value: 1e9, u: 1 }],
    [null],
  ])('refuses the recording rate %j and says where', (recordingRate) => {
    expect(refusal(shot({ timing: { source: 'recordingRate', recordingRate } }))).toMatchObject({
      code: 'invalidShot',
      message: expect.stringContaining('timing.recordingRate'),
    });
  });

  it.each([
    [{ scale: { lengths: [{ from: [5, 5], to: [5, 5], length: 0.2, u: 0 }] } }, 'same pixel'],
    [{ scale: { lengths: [] } }, 'neither a known length nor a plane'],
    [{ scale: {} }, 'neither a known length nor a plane'],
    [{ muzzle: { point: [1, 1], axis: [0, 0] } }, 'muzzle.axis'],
    [
      {
        edits: {
          manualPoints: [
            { frame: 3, x: 1, y: 1 },
            { frame: 3, x: 2, y: 1 },
          ],
        },
      },
      'one frame',
    ],
    [{ seals: { muzzle: { burstBetween: [7, 7] } } }, 'burstBetween'],
    [{ coverage: 1 }, 'coverage'],
  ])('refuses %j', (change, words) => {
    expect(refusal(shot(change)).message).toContain(words);
  });

  it.each(['', '{', '[]', 'null', '{"format":"other"}'])('refuses %j as no shot file', (text) => {
    const parsed = parseShot(text);
    expect(parsed.ok ? 'accepted' : parsed.reason.code).toMatch(/^not(Json|Shot)$/);
  });
});
