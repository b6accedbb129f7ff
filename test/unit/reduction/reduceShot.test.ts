import { describe, expect, it } from 'vitest';
import { isAvailable } from '../../../src/core/estimate';
import type { FrameRange } from '../../../src/core/film';
import { concludeShot } from '../../../src/reduction/concludeShot';
import { measureFilm, stillMeasures } from '../../../src/reduction/measureFilm';
import { reduceShot } from '../../../src/reduction/reduceShot';
import type { ReductionInputs } from '../../../src/reduction/types';
import {
  film,
  filmWithHot,
  going,
  inputs,
  RATE,
  recorder,
  type Script,
  scriptedMeasurer,
  slowing,
  WIDTH,
} from './scriptedFilm';

/** 12 px a frame at 1.25 mm a pixel and 10 000 frames/s. */
const SPEED = 12 * 1.25e-3 * RATE;
const script: Script = { at: slowing(12, 8) };

const reduce = (given: ReductionInputs, what: Script = script) => {
  const { events, onEvent } = recorder();
  const measurer = scriptedMeasurer(what);
  return reduceShot(given, film, measurer, onEvent, going).then((reduction) => ({
    ...reduction,
    events,
    setups: measurer.setups,
  }));
};
const velocity = ({ result }: Awaited<ReturnType<typeof reduce>>) => {
  if (!isAvailable(result.exitVelocity)) throw new Error(result.exitVelocity.unavailable.message);
  return result.exitVelocity;
};
const codes = ({ result }: Awaited<ReturnType<typeof reduce>>) =>
  result.warnings.map((w) => w.code);

describe('reduceShot', () => {
  it('finds the scripted speed and says where every number comes from', async () => {
    const reduction = await reduce(inputs());
    const v = velocity(reduction);
    expect(Math.abs(v.value - SPEED)).toBeLessThan(3 * v.u);
    expect(v.u / v.value).toBeLessThan(0.01);
    expect(reduction.result.exitTime).toMatchObject({ value: expect.closeTo(8 / RATE, 5) });
    expect(reduction.result.budget.exitVelocity.map((entry) => entry.source)).toEqual(
      expect.arrayContaining(['known length', 'depth of the known length', 'recording rate']),
    );
    expect(reduction.result.lead).toMatchObject({ unavailable: { code: 'noSealInView' } });
    expect(JSON.stringify(reduction.result)).not.toMatch(/NaN|Infinity/);
  });

  it('tells the streak line before its rows, every frame once, and centres as they come', async () => {
    const { events } = await reduce(inputs());
    const kinds = events.map((event) => event.kind);
    expect(kinds.indexOf('streakLine')).toBeLessThan(kinds.indexOf('streakRow'));
    const frames = events.flatMap((event) => (event.kind === 'streakRow' ? [event.frame] : []));
    expect(frames.sort((a, b) => a - b)).toEqual(Array.from({ length: 40 }, (_, i) => i));
    const small = events.flatMap((one) => (one.kind === 'smallPicture' ? [one.picture.index] : []));
    expect(small).toEqual(frames);
    expect(kinds.lastIndexOf('streakRow')).toBeLessThan(kinds.indexOf('centre'));
  });

  it('tells when the fit begins, when its Monte Carlo check does, and when that is over', async () => {
    const { events } = await reduce(inputs());
    const told = events.flatMap((event) => (event.kind === 'progress' ? [event] : []));
    expect(told.slice(-3)).toEqual([
      { kind: 'progress', stage: 'fit', done: 0, total: 1 },
      { kind: 'progress', stage: 'uncertainty', done: 0, total: 1 },
      { kind: 'progress', stage: 'uncertainty', done: 1, total: 1 },
    ]);
  });

  it('follows a ball that flies the other way than assumed, laying out seal and streak anew', async () => {
    // The muzzle is left of the middle, so a flight to the right is assumed; the ball goes left.
    const reduction = await reduce(inputs({ muzzle: { point: [190, 30], axis: null } }), {
      at: (frame) => (frame < 8 || frame > 22 ? null : [190 - 12 * (frame - 8), 30]),
    });
    expect(reduction.setups).toBe(2);
    expect(reduction.result.axis[0]).toBeCloseTo(-1, 3);
    expect(Math.abs(velocity(reduction).value - SPEED)).toBeLessThan(3 * velocity(reduction).u);
  });

  it('takes a frame out and a hand-placed centre in without measuring again', async () => {
    const measurer = scriptedMeasurer(script);
    const first = inputs();
    const measured = await measureFilm(first, film, measurer, () => undefined, going);
    const edited = inputs({
      edits: {
        rejectedFrames: [12],
        manualPoints: [{ frame: 15, x: 190, y: 30, ux: 0.5, uy: 0.5 }],
      },
    });
    expect(stillMeasures(measured, edited)).toBe(true);
    const { positions } = concludeShot(edited, measured).result;
    expect(positions.find((p) => p.frame === 12)).toMatchObject({
      used: false,
      why: { code: 'rejectedByHand' },
    });
    expect(positions.find((p) => p.frame === 15)).toMatchObject({ manual: true, x: 190 });
    // Concluding again from the same film is the reduction itself.
    const again = await reduce(edited);
    expect(concludeShot(edited, measured).result).toEqual(again.result);
  });

  it.each([
    ['the muzzle', { muzzle: { point: [110, 30], u: 0.5, axis: null } }],
    ['the region of flight', { region: { flight: [0, 0, 300, 60] } }],
    ['the ball', { ball: { diameter: { value: 0.02, u: 1e-5 }, mass: { value: 0.002, u: 1e-5 } } }],
  ])('must measure again when %s changes', async (_what, change) => {
    const measured = await measureFilm(
      inputs(),
      film,
      scriptedMeasurer(script),
      () => undefined,
      going,
    );
    expect(stillMeasures(measured, inputs(change))).toBe(false);
  });

  it('warns of faulty pixels where the ball passes them, and of no others', async () => {
    const warningOf = async (pixels: readonly (readonly [number, number])[]) => {
      const { onEvent } = recorder();
      const faulty = filmWithHot(pixels);
      const { result } = await reduceShot(
        inputs(),
        faulty,
        scriptedMeasurer(script),
        onEvent,
        going,
      );
      return result.warnings.find(({ code }) => code === 'faultyPixels');
    };
    // The ball of 12 px radius flies along y = 30 from x = 100 on; one pixel lies between two of its places.
    const [inWay, beside, before] = [
      [206, 27],
      [206, 48],
      [60, 30],
    ] as const;
    expect((await warningOf([inWay, [260, 38], beside, before]))?.message).toContain('passes: 2.');
    expect(await warningOf([beside, before])).toBeUndefined();
  });

  it('gives no speed from two frames, and says so', async () => {
    const { result } = await reduce(inputs(), {
      at: (frame) => (frame === 10 ? [150, 30] : frame === 11 ? [162, 30] : null),
    });
    expect(result.exitVelocity).toMatchObject({ unavailable: { code: 'tooFewFrames' } });
    expect(result.lead).toHaveProperty('unavailable');
  });

  it('gives no speed without a ball', async () => {
    const { result } = await reduce(inputs(), { at: () => null });
    expect(result.exitVelocity).toMatchObject({ unavailable: { code: 'noBall' } });
    expect(result.positions).toEqual([]);
  });

  it('notices lost and repeated frames', async () => {
    const lost = await reduce(inputs(), { at: (f) => script.at(f < 18 ? f : f + 1) });
    expect(codes(lost)).toContain('framesLost');
    const repeated = await reduce(inputs(), { at: (f) => script.at(f < 18 ? f : f - 1) });
    expect(codes(repeated)).toContain('framesRepeated');
    expect(codes(await reduce(inputs()))).toEqual([]);
  });

  it('warns no longer of a repeated frame that was rejected', async () => {
    const repeated: Script = { at: (f) => script.at(f < 18 ? f : f - 1) };
    const edits = { rejectedFrames: [18], manualPoints: [] };
    expect(codes(await reduce(inputs({ edits }), repeated))).not.toContain('framesRepeated');
  });

  it('counts how well the seal plane is known in the moment of contact', async () => {
    const contactU = async (u: number) => {
      const plane = { point: [100, 30], u };
      const seals = { muzzle: { plane } };
      const { result } = await reduce(inputs({ seals }));
      if (!isAvailable(result.contact)) throw new Error(result.contact.unavailable.message);
      return result.contact.u;
    };
    const [exact, rough] = [await contactU(0), await contactU(3)];
    // 3 px at 12 px a frame.
    expect(Math.sqrt(rough ** 2 - exact ** 2) * RATE).toBeCloseTo(3 / 12, 2);
  });

  it('goes through all of the film once, and looks again only where something moves', async () => {
    const ranges: FrameRange[] = [];
    const frameCount = 2000;
    const told = {
      async *frames(range: FrameRange) {
        ranges.push(range);
        for (let index = range.start; index < range.end; index++) {
          for await (const frame of film.frames({ start: 0, end: 1 })) {
            // The film's frames are still; something goes by in these.
            if (index >= 1000 && index < 1030) frame.data.fill(200, 10 * (index - 1000), 3000);
            yield { ...frame, index };
          }
        }
      },
    };
    const long = inputs();
    const moved = (index: number) => script.at(index - 1000);
    const { result } = await reduceShot(
      { ...long, info: { ...long.info, frameCount } },
      told,
      scriptedMeasurer({ ...script, at: moved }),
      () => undefined,
      going,
    );
    expect(isAvailable(result.exitVelocity)).toBe(true);
    const [first, ...others] = ranges;
    expect(first).toEqual({ start: 0, end: frameCount });
    expect(others.length).toBeGreaterThan(0);
    const again = others.reduce((sum, { start, end }) => sum + end - start, 0);
    expect(again).toBeLessThan(200);
  });

  it('takes no ball that flies against the direction stated', async () => {
    const { result } = await reduce(inputs({ muzzle: { point: [100, 30], axis: [-1, 0] } }));
    expect(result.exitVelocity).toMatchObject({ unavailable: { code: 'againstDirection' } });
  });

  it('takes no ball whose path misses the muzzle', async () => {
    const { result } = await reduce(inputs({ muzzle: { point: [100, 58], axis: null } }));
    expect(result.exitVelocity).toMatchObject({ unavailable: { code: 'besideMuzzle' } });
  });

  it('lets centres placed by hand overrule a direction stated against them', async () => {
    const byHand = [10, 12, 14, 16].map((frame) => {
      const [x, y] = script.at(frame) ?? [0, 0];
      return { frame, x, y, ux: 0.2, uy: 0.2 };
    });
    const { result } = await reduce(
      inputs({
        muzzle: { point: [100, 30], axis: [-1, 0] },
        edits: { rejectedFrames: [], manualPoints: byHand },
      }),
      { at: () => null },
    );
    expect(result.warnings.map((w) => w.code)).toContain('axisOpposed');
    expect(result.axis[0]).toBeCloseTo(1, 3);
    expect(isAvailable(result.exitVelocity)).toBe(true);
  });

  it('corrects distances for a stated direction a little off the path', async () => {
    const angle = (5 * Math.PI) / 180;
    const off = await reduce(
      inputs({ muzzle: { point: [100, 30], axis: [Math.cos(angle), Math.sin(angle)] } }),
    );
    const along = await reduce(inputs());
    expect(codes(off)).toContain('axisDisagrees');
    expect(velocity(off).value / velocity(along).value).toBeCloseTo(1, 3);
  });

  it.each([
    [{ muzzle: null }, 'noMuzzle'],
    [{ muzzle: { point: [WIDTH + 20, 30] } }, 'muzzleOutside'],
    [{ region: { flight: [1000, 0, 50, 50] } }, 'regionOutside'],
    [{ ball: { diameter: { value: 0.001, u: 0 }, mass: { value: 0.001, u: 0 } } }, 'ballTooSmall'],
    [{ ball: { diameter: { value: 2, u: 0 }, mass: { value: 0.001, u: 0 } } }, 'ballTooLarge'],
    [
      { edits: { rejectedFrames: [], manualPoints: [{ frame: 40, x: 200, y: 30 }] } },
      'pointOutsideFilm',
    ],
    [
      {
        air: {
          temperature: { value: 293, u: 293 },
          pressure: { value: 101_325, u: 100 },
          humidity: { value: 0.5, u: 0.1 },
        },
      },
      'airImplausible',
    ],
  ])('refuses %j', async (change, code) => {
    await expect(reduce(inputs(change))).rejects.toMatchObject({ code });
  });

  it('stops when cancelled', async () => {
    const abort = new AbortController();
    const run = reduceShot(
      inputs(),
      film,
      scriptedMeasurer(script),
      (event) => {
        if (event.kind === 'streakRow' && event.frame === 10) abort.abort();
      },
      abort.signal,
    );
    await expect(run).rejects.toMatchObject({ name: 'AbortError' });
  });
});
