import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { findOnset } from '../../../src/sound/onset';

const RATE = 48_000;
const ONSET = 0.12345;

interface Event {
  readonly at: number;
  readonly size: number;
}

/** White noise of 0.003 with sudden tones of 2 kHz. */
function track(events: readonly Event[], noise = 0.003, most = 1) {
  const random = seededRandom(3);
  const samples = Float32Array.from({ length: RATE / 4 }, (_, i) => {
    let x = noise * random.normal();
    for (const { at, size } of events) {
      const t = i / RATE - at;
      if (t > 0) x += size * Math.cos(2 * Math.PI * 2000 * t) * Math.exp(-t / 1e-3);
    }
    return Math.max(-most, Math.min(most, x));
  });
  return { samples, sampleRate: RATE, firstSampleTime: 0.05 };
}
const search = { between: null, coverage: 0.95, what: 'burst' } as const;

describe('findOnset', () => {
  it('times a crack to well within a sample, on the film clock', () => {
    const found = findOnset(track([{ at: ONSET, size: 0.5 }]), search);
    if (!found.ok) throw new Error(found.reason.message);
    expect(Math.abs(found.value.value - (ONSET + 0.05))).toBeLessThan(1.5 / RATE);
    expect(found.value.interval[0]).toBeLessThan(ONSET + 0.05);
    expect(found.value.interval[1]).toBeGreaterThan(ONSET + 0.05);
  });

  it('takes the direct sound, not an echo twice as loud', () => {
    const events = [
      { at: ONSET, size: 0.2 },
      { at: ONSET + 0.004, size: 0.4 },
    ];
    const found = findOnset(track(events), search);
    if (!found.ok) throw new Error(found.reason.message);
    expect(Math.abs(found.value.value - (ONSET + 0.05))).toBeLessThan(2 / RATE);
  });

  it('looks where it is told to', () => {
    const events = [
      { at: 0.08, size: 0.5 },
      { at: 0.16, size: 0.5 },
    ];
    const found = findOnset(track(events), { ...search, between: [0.2, 0.22] });
    if (!found.ok) throw new Error(found.reason.message);
    expect(Math.abs(found.value.value - 0.21)).toBeLessThan(2 / RATE);
  });

  it('is less sure of it the more noise there is', () => {
    const u = (noise: number) => {
      const found = findOnset(track([{ at: ONSET, size: 0.5 }], noise), search);
      return found.ok ? found.value.u : 0;
    };
    expect(u(0.1)).toBeGreaterThan(2 * u(0.001));
  });

  it.each([
    ['noSoundOnset', track([]), search],
    ['noSoundOnset', track([], 0), search],
    ['soundClipped', track([{ at: ONSET, size: 5 }]), search],
    ['soundTooShort', track([{ at: ONSET, size: 0.5 }]), { ...search, between: [9, 9.1] as const }],
  ])('%s', (code, sound, where) => {
    const found = findOnset(sound, where);
    expect(found.ok ? null : found.reason.code).toBe(code);
  });
});
