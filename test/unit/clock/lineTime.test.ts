import { describe, expect, it } from 'vitest';
import { readLamp } from '../../../src/clock/lampProfile';
import { measureLineTime } from '../../../src/clock/lineTime';
import type { GreyFrame } from '../../../src/core/frame';
import { normalStream } from '../noise';

/** How a lamp's clip is made; the truth the measurement is set against. */
interface Clip {
  readonly fps: number;
  readonly frames: number;
  readonly lines: number;
  readonly lineTime: number;
  readonly direction: 'down' | 'up' | 'right' | 'left';
  readonly exposure: number;
  readonly flicker: number;
  /** Noise of a line's mean, grey values of about 120. */
  readonly noise: number;
  readonly seed: number;
  /** Share of the light that is steady. */
  readonly steady?: number;
  readonly times?: readonly number[];
  readonly otherLines?: number;
}

/** Light of a lamp on rectified mains, brightness 0..1: the charge left between two peaks decays. */
function lampLight(cycles: number): number {
  const phase = cycles - Math.floor(cycles);
  return Math.max(Math.abs(Math.cos(Math.PI * phase)), 0.85 - 0.6 * phase);
}

function lampLines(clip: Clip) {
  const noise = normalStream(clip.seed);
  const phase0 = 0.37 * clip.seed;
  const { steady = 0.3, lines, otherLines = 4 } = clip;
  const times = clip.times ?? Array.from({ length: clip.frames }, (_, k) => k / clip.fps);
  const reversed = clip.direction === 'up' || clip.direction === 'left';
  const upright = clip.direction === 'down' || clip.direction === 'up';
  const profiles = times.map((time) => {
    const along = new Float64Array(lines);
    let all = 0;
    for (let i = 0; i < lines; i++) {
      const read = time + (reversed ? lines - 1 - i : i) * clip.lineTime;
      let light = 0;
      for (let j = 0; j < 12; j++) {
        light +=
          lampLight(clip.flicker * (read + clip.exposure * ((j + 0.5) / 12 - 0.5)) + phase0) / 12;
      }
      // The picture itself grows darker towards its edges.
      const scene = 120 * (1 - 0.4 * (i / lines - 0.5) ** 2);
      along[i] = scene * (steady + (1 - steady) * light) + clip.noise * noise();
      all += (along[i] as number) / lines;
    }
    const across = Float64Array.from(
      { length: otherLines },
      () => all + 0.1 * clip.noise * noise(),
    );
    return upright ? { rows: along, columns: across } : { rows: across, columns: along };
  });
  return { profiles, times };
}

const PHONE_FAST: Clip = {
  fps: 240,
  frames: 64,
  lines: 640,
  lineTime: 10e-6,
  direction: 'left',
  exposure: 1 / 2000,
  flicker: 100,
  noise: 1.5,
  seed: 1,
};
const PHONE_SLOW: Clip = {
  ...PHONE_FAST,
  fps: 30,
  frames: 40,
  lines: 540,
  lineTime: 32e-6,
  direction: 'down',
  exposure: 1 / 500,
};
const MAINS_U = 0.04;

const measure = (clip: Clip, assumed: Clip['direction'] | null = null) => {
  const { profiles, times } = lampLines(clip);
  // What is stated of the mains is off by its own uncertainty.
  const stated = clip.flicker + MAINS_U * normalStream(1000 + clip.seed)();
  return measureLineTime(profiles, times, { value: stated, u: MAINS_U }, assumed);
};
const measured = (clip: Clip, assumed: Clip['direction'] | null = null) => {
  const outcome = measure(clip, assumed);
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};
const codeOf = (clip: Clip) => {
  const outcome = measure(clip);
  return outcome.ok ? 'given' : outcome.reason.code;
};

describe('measureLineTime', () => {
  it.each([
    ['240 frames/s, read to the left', PHONE_FAST],
    ['30 frames/s, read downwards, nearly three flickers a frame', PHONE_SLOW],
    [
      '60 Hz mains at 25 frames/s, read upwards',
      { ...PHONE_SLOW, fps: 25, flicker: 120, direction: 'up' },
    ],
    [
      'a high-speed camera that reads to the right',
      { ...PHONE_FAST, fps: 1050, frames: 160, lineTime: 1e-6, noise: 0.5, direction: 'right' },
    ],
  ] as const)('%s: direction and line time', (_what, clip) => {
    const { direction, lineTime, rolls, frequencyCheck } = measured(clip);
    expect(direction).toBe(clip.direction);
    expect(rolls).toBe(true);
    expect(Math.abs(lineTime.value - clip.lineTime)).toBeLessThan(3 * lineTime.u);
    expect(lineTime.u).toBeLessThan(0.02 * clip.lineTime);
    expect(frequencyCheck.agrees).toBe(true);
  });

  it('covers the truth with its 95 % interval in 92 to 98 % of 300 shots', () => {
    let inside = 0;
    for (let seed = 0; seed < 300; seed++) {
      const base = seed % 2 === 0 ? PHONE_FAST : PHONE_SLOW;
      const clip: Clip = {
        ...base,
        seed,
        lines: 20,
        frames: 36,
        lineTime: base.lineTime * (24 + 0.01 * seed),
        noise: 6,
        direction: (['down', 'up', 'left', 'right'] as const)[seed % 4] ?? 'down',
      };
      const { lineTime, direction } = measured(clip);
      expect(direction).toBe(clip.direction);
      if (Math.abs(lineTime.value - clip.lineTime) < 1.96 * lineTime.u) inside++;
    }
    expect(inside / 300).toBeGreaterThan(0.92);
    expect(inside / 300).toBeLessThan(0.98);
  });

  it('takes uneven frame times as they are', () => {
    const times = Array.from({ length: 64 }, (_, k) => k / 240 + (k % 5 === 3 ? 0.0011 : 0));
    const clip = { ...PHONE_FAST, times };
    const { lineTime, direction } = measured(clip);
    expect(direction).toBe('left');
    expect(Math.abs(lineTime.value - clip.lineTime)).toBeLessThan(3 * lineTime.u);
  });

  it('finds no line time with a global shutter', () => {
    const { lineTime, rolls } = measured({ ...PHONE_FAST, direction: 'down', lineTime: 0 });
    expect(rolls).toBe(false);
    expect(lineTime.value).toBeLessThan(3 * lineTime.u);
    expect(lineTime.u).toBeLessThan(1e-7);
  });

  it('leaves the direction open where the lamp flickers once in two frames, unless it is stated', () => {
    const clip = {
      ...PHONE_FAST,
      flicker: 120,
      times: Array.from({ length: 64 }, (_, k) => k / 240),
    };
    expect(codeOf(clip)).toBe('directionOpen');
    const { direction, directionAssumed, lineTime } = measured(clip, 'left');
    expect([direction, directionAssumed]).toEqual(['left', true]);
    expect(Math.abs(lineTime.value - clip.lineTime)).toBeLessThan(4 * lineTime.u);
  });

  it('takes what the film shows over a direction stated wrongly', () => {
    const { direction, directionAssumed } = measured(PHONE_FAST, 'right');
    expect([direction, directionAssumed]).toEqual(['left', false]);
  });

  it.each([
    ['steady light', { ...PHONE_FAST, steady: 1 }, 'noFlicker'],
    [
      'every frame at the same moment of the flicker',
      { ...PHONE_FAST, fps: 60, flicker: 120 },
      'bandsStandStill',
    ],
    ['one flicker', { ...PHONE_FAST, frames: 4 }, 'lampTooShort'],
  ] as const)('refuses %s', (_what, clip, code) => {
    expect(codeOf(clip)).toBe(code);
  });

  it('refuses times that do not belong to the frames', () => {
    const { profiles, times } = lampLines(PHONE_FAST);
    const outcome = measureLineTime(profiles, times.slice(1), { value: 100, u: 0.04 });
    expect(outcome.ok ? 'given' : outcome.reason.code).toBe('profilesUneven');
  });

  it('says when the lamp does not keep the stated frequency on the film clock', () => {
    const { profiles, times } = lampLines(PHONE_FAST);
    const slow = times.map((t) => t * 1.003);
    const outcome = measureLineTime(profiles, slow, { value: 100, u: 0.01 });
    expect(outcome.ok && outcome.value.frequencyCheck.agrees).toBe(false);
    expect(outcome.ok && outcome.value.frequencyCheck.measured.value).toBeCloseTo(100 / 1.003, 1);
  });
});

describe('readLamp', () => {
  /** 8-bit frames of a lit wall with pixel noise, 64 x 96, read upwards at 60 us a line. */
  async function* wall(): AsyncGenerator<GreyFrame> {
    const noise = normalStream(7);
    for (let index = 0; index < 48; index++) {
      const data = new Uint8Array(64 * 96);
      for (let y = 0; y < 96; y++) {
        const light = lampLight(100 * (index / 240 + (95 - y) * 60e-6));
        for (let x = 0; x < 64; x++) data[y * 64 + x] = Math.round(90 + 60 * light + 3 * noise());
      }
      yield { index, width: 64, height: 96, data, white: 255 };
    }
  }

  it('gives profiles from which the line time of 8-bit frames comes out', async () => {
    const told: number[] = [];
    const profiles = await readLamp(wall(), (done) => told.push(done));
    expect(told.at(-1)).toBe(48);
    expect(profiles[0]?.rows.length).toBe(96);
    expect(profiles[0]?.columns.length).toBe(64);
    const times = profiles.map((_, k) => k / 240);
    const outcome = measureLineTime(profiles, times, { value: 100, u: 0.01 });
    if (!outcome.ok) throw new Error(outcome.reason.message);
    expect(outcome.value.direction).toBe('up');
    expect(Math.abs(outcome.value.lineTime.value - 60e-6)).toBeLessThan(
      3 * outcome.value.lineTime.u,
    );
  });
});
