import { describe, expect, it } from 'vitest';
import type { FieldOrder, FootageInfo } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { inFields } from '../../../src/footage/fields';
import type { FrameSource } from '../../../src/footage/source';
import { concludeShot } from '../../../src/reduction/concludeShot';
import { measureFilm } from '../../../src/reduction/measureFilm';
import { createMeasurer } from '../../../src/reduction/measurer';
import type { ReductionInputs } from '../../../src/reduction/types';
import { type ImagesShot, takeImages } from '../../validate/estimate/imagesShot';
import { randomStream } from '../../validate/render/random';

const KEY = 41;
const SHOTS = 6;

function filmOf(frames: readonly GreyFrame[], info: FootageInfo): FrameSource {
  return {
    info: { ...info, frameCount: frames.length },
    async *frames({ start, end, step = 1 }) {
      for (let k = start; k < end; k += step) yield frames[k] as GreyFrame;
    },
    timestamps: async () => null,
    audio: async () => null,
    close: async () => {},
  };
}

/** Every two frames as an interlaced camera would have taken them: one field of each, in one frame. */
function woven(frames: readonly GreyFrame[], order: FieldOrder): GreyFrame[] {
  const from = order === 'topFirst' ? 1 : 0;
  return Array.from({ length: frames.length >> 1 }, (_, index) => {
    const [first, second] = frames.slice(2 * index) as [GreyFrame, GreyFrame];
    const data = first.data.slice();
    for (let y = from; y < first.height; y += 2) {
      const line = y * first.width;
      data.set(second.data.subarray(line, line + first.width), line);
    }
    return { ...first, index, data };
  });
}

async function reduced(inputs: ReductionInputs, film: FrameSource) {
  const whole = { ...inputs, info: film.info };
  const measured = await measureFilm(
    whole,
    film,
    createMeasurer(),
    () => {},
    new AbortController().signal,
  );
  return concludeShot(whole, measured).result;
}

type Result = Awaited<ReturnType<typeof reduced>>;

function stated(quantity: Result['exitVelocity']) {
  if (!('value' in quantity)) throw new Error(quantity.unavailable.message);
  return quantity;
}

/** Errors of the centres over what is stated of them, and in px. */
function centresOf({ positions }: Result, { centres }: ImagesShot) {
  return positions.flatMap(({ frame, used, x, y, ux, uy }) => {
    const truth = centres[frame];
    if (!used || truth == null || x === null || y === null || ux === null || uy === null) return [];
    const [offX, offY] = [x - truth[0], y - truth[1]];
    return [{ x: offX / ux, y: offY / uy, offX, offY }];
  });
}

const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

const shots = Array.from({ length: SHOTS }, (_, i) =>
  takeImages('solid', [0], randomStream(KEY, i)),
);
const reductions = await Promise.all(
  shots.map(async (shot, i) => {
    const [inputs] = shot.inputs as [ReductionInputs];
    const order: FieldOrder = i % 2 === 0 ? 'topFirst' : 'bottomFirst';
    const info = { ...inputs.info, interlaced: { stated: order, separated: null } };
    const whole = await reduced(inputs, filmOf(shot.frames, inputs.info));
    const fields = inFields(filmOf(woven(shot.frames, order), info), 'auto');
    return { shot, whole, fields: await reduced(inputs, fields) };
  }),
);

describe('balls that fly by in interlaced film', () => {
  it('have speed and time of exit as stated, and a warning beside them', () => {
    const speeds: number[] = [];
    const times: number[] = [];
    for (const { shot, fields } of reductions) {
      const speed = stated(fields.exitVelocity);
      const time = stated(fields.exitTime);
      speeds.push((speed.value - shot.velocity) / speed.u);
      times.push((time.value - shot.exitTime) / time.u);
      expect(fields.warnings).toContainEqual(
        expect.objectContaining({ code: 'fieldsSeparated', remedy: expect.any(String) }),
      );
    }
    for (const errors of [speeds, times]) {
      expect(Math.max(...errors.map(Math.abs))).toBeLessThan(3);
      expect(rms(errors)).toBeLessThan(1.5);
    }
  });

  it('stand in each field, across and down, within what is stated', () => {
    const all = reductions.flatMap(({ shot, fields }) => centresOf(fields, shot));
    expect(all.length).toBeGreaterThan(100);
    for (const along of ['x', 'y'] as const) {
      const errors = all.map((one) => one[along]);
      expect(rms(errors)).toBeGreaterThan(0.7);
      expect(rms(errors)).toBeLessThan(1.3);
    }
  });

  it('stand on the average where they stand in whole frames: lines filled in pull at none', () => {
    for (const { shot, whole, fields } of reductions) {
      const [inFrames, inFields] = [whole, fields].map((result) => centresOf(result, shot));
      for (const along of ['offX', 'offY'] as const) {
        const mean = (all: typeof inFields = []) =>
          all.reduce((sum, one) => sum + one[along], 0) / all.length;
        expect(Math.abs(mean(inFields) - mean(inFrames))).toBeLessThan(0.08);
      }
    }
  });
});
