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

  // Beginnings spread evenly from one sample to the next lie a fortieth to a twentieth of the way before the second one
  // in 2.5 % of all cases: an interval with no more than 2.5 % above it holds such a moment more often than not.
  it('does not shut out a beginning right before a sample', () => {
    const held = Array.from({ length: 40 }, (_, i) => {
      const random = seededRandom(100 + i);
      const onset = (6000 - 0.025 + 0.025 * random.uniform()) / RATE;
      const samples = Float64Array.from({ length: RATE / 4 }, () => 0.003 * random.normal());
      for (let k = 6000; k < 6200; k++) {
        const t = k / RATE - onset;
        const swing = Math.cos(2 * Math.PI * 2000 * t) * Math.exp(-t / 1e-3);
        samples[k] = (samples[k] as number) + 0.5 * (1 - Math.exp(-t / 15e-6)) * swing;
      }
      const track = { samples: Float32Array.from(samples), sampleRate: RATE, firstSampleTime: 0 };
      const found = findOnset(track, search);
      return found.ok && found.value.interval[0] <= onset && onset <= found.value.interval[1];
    });
    expect(held.filter(Boolean).length).toBeGreaterThan(20);
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
