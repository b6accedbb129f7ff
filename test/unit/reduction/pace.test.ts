import { describe, expect, it } from 'vitest';
import { success } from '../../../src/core/reason';
import type { CentreMeasurement } from '../../../src/image/types';
import { measureFilm } from '../../../src/reduction/measureFilm';
import type { FrameMeasurer } from '../../../src/reduction/types';
import { film, going, inputs, RATE, scriptedMeasurer } from './scriptedFilm';

const EXPOSURE = 5e-5;
/** A light ball that the air slows by 0.06 % per pixel of its way: by a sixth over the film. */
const DRAG = 6e-4;
const BALL = { diameter: { value: 0.03, u: 1e-5 }, mass: { value: 4.5e-4, u: 1e-6 } };
const SPEED = 14;
const FROM = 6.4;

const at = (frame: number) => {
  const x = 100 + Math.log1p(DRAG * SPEED * (frame - FROM)) / DRAG;
  return frame < FROM || x > 388 ? null : ([x, 30] as const);
};
/** Pixels the ball moves during the exposure of a frame. */
const lengthIn = (frame: number) => (SPEED / (1 + DRAG * SPEED * (frame - FROM))) * RATE * EXPOSURE;

/** Tells the true length of blur as a multiple of that expected, and keeps what was expected pass by pass. */
function measuring(noise: number) {
  const plain = scriptedMeasurer({ at, noise });
  const passes: Map<number, number>[] = [];
  const measurer: FrameMeasurer = {
    ...plain,
    centres: async (hints) => {
      const expected = hints.map(({ frame, ball }) => {
        const length = Math.hypot(...ball.blur);
        let pass = passes.find((one) => !one.has(frame.index));
        if (pass === undefined) {
          pass = new Map();
          passes.push(pass);
        }
        pass.set(frame.index, length);
        return { frame: frame.index, length };
      });
      const found = await plain.centres(hints);
      return found.map((centre, i) => {
        const { frame, length } = expected[i] as { frame: number; length: number };
        if (!centre.ok) return centre;
        const stretch = lengthIn(frame) / length;
        const told: Partial<CentreMeasurement> = { blur: { stretch, u: 0.01 } };
        return success({ ...centre.value, ...told });
      });
    },
  };
  return { measurer, passes };
}

const measure = (noise: number) => {
  const { measurer, passes } = measuring(noise);
  const timing = {
    source: 'recordingRate',
    recordingRate: { value: RATE, u: 0.5 },
    exposure: { value: EXPOSURE, u: 1e-6 },
  };
  return measureFilm(inputs({ timing, ball: BALL }), film, measurer, () => undefined, going).then(
    (measured) => ({ measured, passes }),
  );
};

describe('the speed that blurs the ball', () => {
  it('is that of the track at first, then that of the centres around each frame', async () => {
    const { measured, passes } = await measure(0.02);
    const [first, second] = passes;
    if (first === undefined || second === undefined) throw new Error('not measured twice');
    const found = [...measured.centres].flatMap(([frame, centre]) => (centre.ok ? [frame] : []));
    expect(found.length).toBeGreaterThan(20);
    const off = (pass: Map<number, number>, frame: number) =>
      Math.abs((pass.get(frame) as number) / lengthIn(frame) - 1);
    expect(new Set(first.values()).size).toBe(1);
    expect(Math.max(...found.map((frame) => off(first, frame)))).toBeGreaterThan(0.06);
    // Changes below 1 % are left alone.
    for (const frame of found) expect(off(second, frame)).toBeLessThan(0.015);
    for (const frame of found) {
      const ball = measured.hintFor(frame)?.ball;
      expect(Math.hypot(...(ball?.blur ?? [0, 0]))).toBe(second.get(frame));
    }
  });

  it('leaves the length that a frame alone tells as it is', async () => {
    const { measured } = await measure(0.02);
    for (const [frame, centre] of measured.centres) {
      if (!centre.ok) continue;
      const expected = Math.hypot(...(measured.hintFor(frame)?.ball.blur ?? [0, 0]));
      expect((centre.value.blur?.stretch ?? 0) * expected).toBeCloseTo(lengthIn(frame), 9);
    }
  });

  it("stays the track's where the centres scatter too much to tell another", async () => {
    const { measured, passes } = await measure(1.5);
    const [ofTrack] = passes[0]?.values() ?? [];
    const lengths = [...measured.centres.keys()].map((frame) =>
      Math.hypot(...(measured.hintFor(frame)?.ball.blur ?? [0, 0])),
    );
    // A change has to be of three standard uncertainties; that of 7 % at the ends is about one.
    const usual = lengths.filter((length) => length === ofTrack);
    expect(lengths.length).toBeGreaterThan(20);
    expect(usual.length).toBeGreaterThan(0.7 * lengths.length);
  });
});
