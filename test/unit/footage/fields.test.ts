import { expect, it } from 'vitest';
import type { FieldOrder, FootageInfo, FrameRange } from '../../../src/core/film';
import { isFilmed } from '../../../src/core/frame';
import { inFields } from '../../../src/footage/fields';
import type { FrameSource } from '../../../src/footage/source';
import { framesOf } from './reading';

const LINES = 5;

/** Frame k has 100 k + 10 y in line y. */
function source(rotation: FootageInfo['rotation'], stated: FieldOrder | null): FrameSource {
  const turned = rotation === 90 || rotation === 270;
  const line = (i: number) => (rotation === 90 || rotation === 180 ? LINES - 1 - i : i);
  return {
    info: {
      ...{ name: 'a', container: 'a', codec: 'a', frameCount: 4, playbackRate: 25, rotation },
      ...{ width: turned ? LINES : 1, height: turned ? 1 : LINES, bitDepth: 16, pixelAspect: 1 },
      ...{ hasAudio: false, decoder: { name: 'none', why: { code: 'none', message: 'scripted' } } },
      interlaced: { stated, separated: null },
      levels: { black: 0, white: 65_535 },
    },
    timestamps: async () => Float64Array.of(0, 0.04, 0.08, 0.14),
    async *frames({ start, end, step = 1 }: FrameRange) {
      for (let index = start; index < end; index += step) {
        const data = Uint16Array.from({ length: LINES }, (_, i) => 100 * index + 10 * line(i));
        yield { index, width: turned ? LINES : 1, height: turned ? 1 : LINES, data, white: 65_535 };
      }
    },
    audio: async () => null,
    close: async () => {},
  };
}

it('leaves frames whole where nothing says they are interlaced, or a person says they are not', () => {
  for (const film of [source(0, null), source(0, 'topFirst')]) {
    const choice = film.info.interlaced.stated === null ? 'auto' : 'whole';
    expect(inFields(film, choice)).toBe(film);
  }
});

it('gives each field its own lines and times, the lines between filled in from those beside', async () => {
  const film = inFields(source(0, 'topFirst'), 'auto');
  expect(film.info).toMatchObject({ frameCount: 8, playbackRate: 50 });
  const times = await film.timestamps();
  [0, 0.02, 0.04, 0.06, 0.08, 0.11, 0.14, 0.17].forEach((time, i) => {
    expect(times?.[i]).toBeCloseTo(time, 12);
  });
  const frames = await framesOf(film, { start: 2, end: 4 });
  expect(frames.map(({ index, data }) => [index, ...data])).toEqual([
    [2, 100, 110, 120, 130, 140],
    [3, 110, 110, 120, 130, 130],
  ]);
});

it('finds the lines of turned film, and the fields asked for', async () => {
  const bottom = inFields(source(270, null), 'bottomFirst');
  const [first] = await framesOf(bottom, { start: 0, end: 1 });
  expect([...(first?.data ?? [])]).toEqual([10, 10, 20, 30, 30]);
  const upsideDown = inFields(source(180, null), 'bottomFirst');
  const [turned] = await framesOf(upsideDown, { start: 0, end: 1 });
  expect([...(turned?.data ?? [])]).toEqual([30, 30, 20, 10, 10]);
  for (const [film, firstLine] of [
    [bottom, 1],
    [upsideDown, 1],
    [inFields(source(90, null), 'topFirst'), 0],
    [inFields(source(0, null), 'bottomFirst'), 1],
  ] as const) {
    const { rotation } = film.info;
    for (const frame of await framesOf(film, { start: 0, end: 2 })) {
      const lines = [0, 1, 2, 3, 4].flatMap((i) => {
        const [x, y] = rotation === 90 || rotation === 270 ? [i, 0] : [0, i];
        return isFilmed(frame, x, y) ? [(frame.data[i] as number) / 10] : [];
      });
      const first = frame.index === 0 ? firstLine : 1 - firstLine;
      const filmed = [0, 1, 2, 3, 4].filter((line) => line % 2 === first);
      expect(lines.sort()).toEqual(filmed);
    }
  }
  for (const step of [1, 2, 3, 4]) {
    const seen = await framesOf(bottom, { start: 1, end: 8, step });
    const wanted = Array.from({ length: Math.ceil(7 / step) }, (_, i) => 1 + i * step);
    expect(seen.map(({ index }) => index)).toEqual(wanted);
  }
  expect(await framesOf(bottom, { start: 3, end: 3 })).toEqual([]);
});
