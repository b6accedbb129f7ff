import { describe, expect, it } from 'vitest';
import { buildClock, gapsOf } from '../../../src/clock/clock';
import type { Timing } from '../../../src/shot/schema';

const info = { width: 360, height: 640, frameCount: 100, playbackRate: 30 };
const timing = (change: Partial<Timing>): Timing => ({
  source: 'recordingRate',
  recordingRate: { value: 12_000, u: 0.6 },
  exposure: null,
  readout: { direction: 'down', lineTime: { value: 0, u: 0 } },
  droppedFrames: [],
  ...change,
});
const built = (...args: Parameters<typeof buildClock>) => {
  const clock = buildClock(...args);
  if (!clock.ok) throw new Error(clock.reason.message);
  return clock.value;
};

describe('buildClock', () => {
  it('counts frames at the recording rate, not at the playback rate of the file', () => {
    const clock = built(timing({}), info, null);
    expect(clock.frameTime(24)).toBeCloseTo(0.002, 12);
    expect(clock.rateRelativeU).toBeCloseTo(5e-5, 12);
    expect(clock.warnings).toEqual([]);
  });

  it('moves frames after a stated gap later', () => {
    const clock = built(timing({ droppedFrames: [{ after: 9, count: 3 }] }), info, null);
    expect(clock.frameTime(9) * 12_000).toBeCloseTo(9, 9);
    expect(clock.frameTime(10) * 12_000).toBeCloseTo(13, 9);
  });

  it.each([
    ['down', 20],
    ['up', 619],
    ['right', 10],
    ['left', 349],
  ] as const)('counts lines read %s', (direction, lines) => {
    const clock = built(
      timing({ readout: { direction, lineTime: { value: 1e-5, u: 0 } } }),
      info,
      null,
    );
    expect(clock.lineAt(10, 20)).toBe(lines);
    expect(clock.timeAt(0, 10, 20)).toBeCloseTo(lines * 1e-5, 12);
  });

  it('takes uneven time stamps as they are, first frame at zero', () => {
    const stamps = Float64Array.from({ length: 100 }, (_, i) => 5 + i / 240 + (i % 3) * 1e-4);
    const clock = built(
      timing({ source: 'containerTimestamps', recordingRate: null }),
      info,
      stamps,
    );
    expect(clock.frameTime(0)).toBe(0);
    expect(clock.frameTime(4)).toBeCloseTo(4 / 240 + 1e-4, 12);
  });

  it('says when the time stamps look like a mere playback rate', () => {
    const stamps = Float64Array.from({ length: 100 }, (_, i) => i / 30);
    const clock = built(
      timing({ source: 'containerTimestamps', recordingRate: null }),
      info,
      stamps,
    );
    expect(clock.warnings.map((w) => w.code)).toContain('playbackRateSuspected');
  });

  it('says when the stated rate and the time stamps disagree', () => {
    const stamps = Float64Array.from({ length: 100 }, (_, i) => i / 240);
    const clock = built(timing({ source: 'containerTimestamps' }), info, stamps);
    expect(clock.warnings.map((w) => w.code)).toContain('ratesDisagree');
  });

  it('says when time stamps are uneven but an even rate is used', () => {
    const stamps = Float64Array.from({ length: 100 }, (_, i) => (i + (i > 40 ? 2 : 0)) / 30);
    expect(built(timing({}), info, stamps).warnings.map((w) => w.code)).toContain(
      'timestampsUneven',
    );
  });

  it.each([
    [timing({ source: 'containerTimestamps' }), null, 'noTimestamps'],
    [timing({ recordingRate: null }), null, 'noRate'],
    [timing({ droppedFrames: [{ after: 99, count: 1 }] }), null, 'droppedOutside'],
    [
      timing({ source: 'containerTimestamps' }),
      Float64Array.from([0, 1, 1, 2]),
      'timestampsNotRising',
    ],
  ] as const)('refuses %#', (stated, stamps, code) => {
    const clock = buildClock(stated, info, stamps);
    expect(clock.ok ? 'built' : clock.reason.code).toBe(code);
  });
});

describe('gapsOf', () => {
  it('counts long and short gaps against the median', () => {
    expect(gapsOf(Float64Array.from([0, 1, 2, 3, 5, 5.2, 6.2]))).toEqual({
      median: 1,
      long: 1,
      short: 1,
      irregular: 2,
    });
  });
});
