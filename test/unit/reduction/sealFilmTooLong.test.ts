import { expect, it } from 'vitest';
import type { FrameRange } from '../../../src/core/film';
import { passOver } from '../../../src/reduction/firstPass';
import { holdFrames } from '../../../src/reduction/heldFrames';
import { setScene } from '../../../src/reduction/scene';
import { streakAlong, surveyAlong } from '../../../src/reduction/survey';
import type { SurveySetup } from '../../../src/reduction/types';
import type { SealObservation } from '../../../src/seal/types';
import {
  film,
  going,
  inputs,
  recorder,
  type Script,
  scriptedMeasurer,
  slowing,
} from './scriptedFilm';

const script: Script = { at: slowing(12, 8) };
const seal = { region: [90, 10, 40, 40], plane: { point: [100, 30], u: 0.5 } };

/** A film of so many frames, a closer look at all of which shows both seals. */
async function surveyOf(frameCount: number) {
  const short = inputs({ seals: { muzzle: seal, rear: seal } });
  const given = { ...short, info: { ...short.info, frameCount } };
  const { onEvent } = recorder();
  const scene = setScene(given);
  const measurer = scriptedMeasurer(script);
  let setup: SurveySetup | null = null;
  const seen = (of: 'seal' | 'rear', frame: number) =>
    setup?.[of] ? ({ frame } as SealObservation) : null;
  const work = {
    ...{ inputs: given, scene, onEvent, cancellation: going },
    measurer: {
      ...measurer,
      prepare: async (given: SurveySetup) => {
        setup = given;
      },
      survey: async (frames: Parameters<typeof measurer.survey>[0]) =>
        (await measurer.survey(frames)).map((one) => ({
          ...one,
          ...{ seal: seen('seal', one.frame), rear: seen('rear', one.frame) },
        })),
    },
    film: {
      // Nothing reads its pixels.
      async *frames({ start, end }: FrameRange) {
        for await (const frame of film.frames({ start: 0, end: 1 })) {
          for (let index = start; index < end; index++) yield { ...frame, index };
        }
      },
    },
  };
  const brief = { ...work, inputs: short, film };
  const first = await passOver(streakAlong(scene.axis, brief), brief, {
    frame: holdFrames(film).watch,
    settled: () => {},
  });
  const survey = await surveyAlong(scene.axis, work, {
    ...first,
    worthALook: [{ start: 0, end: frameCount }],
    gains: new Float64Array(frameCount).fill(1),
  });
  return { ...survey, setup: setup as SurveySetup | null };
}

it('seals are followed through 4096 frames and no more, and the ball through all of them', async () => {
  const most = await surveyOf(4096);
  for (const one of [most.seal, most.rear]) {
    expect(one?.ok && one.value.observations.map(({ frame }) => frame)).toEqual(
      Array.from({ length: 4096 }, (_, frame) => frame),
    );
  }
  const more = await surveyOf(4097);
  for (const one of [more.seal, more.rear]) {
    expect(one).toMatchObject({
      ok: false,
      reason: { code: 'sealFilmTooLong', values: { most: '4096' } },
    });
  }
  expect([more.setup?.seal, more.setup?.rear]).toEqual([null, null]); // nothing looks at them for nothing
  expect(more.track).toEqual(most.track);
  expect(more.track.ok).toBe(true);
});
