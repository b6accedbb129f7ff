import { expect, it } from 'vitest';
import type { FrameRange } from '../../../src/core/film';
import { ExitframeError } from '../../../src/core/reason';
import { reduceShot } from '../../../src/reduction/reduceShot';
import { film, going, inputs, recorder, scriptedMeasurer, slowing } from './scriptedFilm';

const reduce = (check?: (ranges: readonly FrameRange[]) => Promise<void>) => {
  const { events, onEvent } = recorder();
  const supply = check === undefined ? film : { ...film, check };
  const measurer = scriptedMeasurer({ at: slowing(12, 8) });
  return { run: reduceShot(inputs(), supply, measurer, onEvent, going), events };
};
const LONG = 400;
/** Something is there in frame 7 alone of a longer film. */
const flashing = {
  ...film,
  async *frames({ start, end }: FrameRange) {
    for (let index = start; index < Math.min(end, LONG); index++) {
      for await (const frame of film.frames({ start: 0, end: 1 })) {
        if (index === 7) frame.data.fill(250, 0, 12_000);
        yield { ...frame, index };
      }
    }
  },
};
const longInputs = () => {
  const short = inputs();
  return { ...short, info: { ...short.info, frameCount: LONG } };
};
const damage = new ExitframeError('decoderFailed', 'Frame 9 is damaged.');

it('frames are checked once all of them have been given, and the result is the same', async () => {
  const asked: (readonly FrameRange[])[] = [];
  const checked = reduce(async (ranges) => {
    expect(checked.events.filter(({ kind }) => kind === 'streakRow')).toHaveLength(40);
    asked.push(ranges);
  });
  const { result } = await checked.run;
  expect(asked).toEqual([[{ start: 0, end: 40 }]]);
  expect(result).toEqual((await reduce().run).result);
});

it('frames around what moved are checked while the rest is still gone through, and none twice', async () => {
  const { events, onEvent } = recorder();
  const asked: (readonly FrameRange[])[] = [];
  const given: number[] = [];
  const check = async (ranges: readonly FrameRange[]) => {
    asked.push(ranges);
    given.push(events.filter(({ kind }) => kind === 'streakRow').length);
  };
  const measurer = scriptedMeasurer({ at: slowing(12, 8) });
  const named = { seeds: [{ frame: 390, x: 200, y: 30 }] };
  const asking = longInputs();
  const shot = { ...asking.shot, edits: { ...asking.shot.edits, ...named } };
  await reduceShot({ ...asking, shot }, { ...flashing, check }, measurer, onEvent, going);
  expect(asked).toEqual([[{ start: 0, end: 32 }], [{ start: 326, end: 400 }]]);
  expect(given[0]).toBeLessThan(LONG);
  expect(given[1]).toBe(LONG);
});

it('damage found while the film is gone through ends that at once', async () => {
  const { events, onEvent } = recorder();
  const check = () => Promise.reject(damage);
  const measurer = scriptedMeasurer({ at: slowing(12, 8) });
  const run = reduceShot(longInputs(), { ...flashing, check }, measurer, onEvent, going);
  await expect(run).rejects.toBe(damage);
  expect(events.filter(({ kind }) => kind === 'streakRow').length).toBeLessThan(LONG);
});

it('nothing is concluded before the check is over', async () => {
  let pass = () => {};
  const checked = reduce(() => new Promise<void>((resolve) => (pass = resolve)));
  const stages = () =>
    checked.events.flatMap((event) => (event.kind === 'progress' ? [event.stage] : []));
  await expect.poll(() => stages().at(-1)).toBe('check');
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(stages()).not.toContain('uncertainty');
  pass();
  await checked.run;
  expect(stages()).toContain('uncertainty');
});

it('damage ends the measuring at once, and it is what is told', async () => {
  const { run, events } = reduce(() => Promise.reject(damage));
  await expect(run).rejects.toBe(damage);
  expect(events.map(({ kind }) => kind)).not.toContain('centre');
});

it('damage found last of all is told too', async () => {
  let fail = () => {};
  const { run, events } = reduce(
    () => new Promise<void>((_, reject) => (fail = () => reject(damage))),
  );
  const refused = expect(run).rejects.toBe(damage);
  await expect
    .poll(() => events.some((e) => e.kind === 'progress' && e.stage === 'check'))
    .toBe(true);
  fail();
  await refused;
});

it.each([
  new ExitframeError('decoderMissing', 'It could not be loaded.', 'Reload.', {
    values: { form: 'page', why: 'no network' },
  }),
  new ExitframeError('threadEnded', 'The browser ended it.'),
])('where the film cannot be checked the result says so and why ($code)', async (fault) => {
  const { result } = await reduce(() => Promise.reject(fault)).run;
  const warning = result.warnings.find(({ code }) => code === 'filmUnchecked');
  expect(warning?.message).toContain(fault.message);
  expect(warning?.values).toEqual({ ...fault.values, because: fault.code });
  expect((await reduce().run).result.warnings.map(({ code }) => code)).not.toContain(
    'filmUnchecked',
  );
});
