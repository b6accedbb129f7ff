import { describe, expect, it } from 'vitest';
import { budgetExit } from '../../../src/exit/determineExit';
import { determineScale } from '../../../src/geometry/scale';
import { viewCauses } from '../../../src/geometry/viewCauses';
import type { Scale } from '../../../src/shot/schema';
import { adviceOf } from '../../../src/uncertainty/advice';
import { entry } from '../../../src/uncertainty/budget';
import { HIGH_SPEED, PHONE, simulate } from '../exit/shots';

const line = (source: string, contribution: number) =>
  entry(source, 'B', contribution, 'm/s', 1, null);

describe('adviceOf', () => {
  it('names the largest shares of the variance, largest first, and what they cost', () => {
    const [first, second, ...rest] = adviceOf([
      line('recording rate', 0.1),
      line('ball centres', 3),
      line('known length', 4),
    ]);
    expect(first).toMatchObject({ source: 'known length', share: expect.closeTo(0.64, 3) });
    expect(first?.message).toContain('engraved bar');
    // Without the known length 3.00 of 5.00 are left.
    expect(first?.message).toContain('40 % smaller');
    expect(second).toMatchObject({ source: 'ball centres', share: expect.closeTo(0.36, 3) });
    expect(rest).toEqual([]);
  });

  it('takes lines of one name together', () => {
    const advice = adviceOf([line('lens centre', 3), line('ball mass', 4), line('lens centre', 4)]);
    expect(advice.map(({ source }) => source)).toEqual(['lens centre', 'ball mass']);
    expect(advice[0]?.share).toBeCloseTo(25 / 41, 12);
  });

  it('lists three at most and has nothing to say of no budget', () => {
    expect(adviceOf(['a', 'b', 'c', 'd', 'e'].map((name) => line(name, 1)))).toHaveLength(3);
    expect(adviceOf([])).toEqual([]);
    expect(adviceOf([line('ball mass', 0)])).toEqual([]);
  });
});

const SCALE: Scale = {
  lengths: [
    {
      from: [100, 128],
      to: [700, 128],
      length: 0.2,
      u: 5e-5,
      endpointU: 0.3,
      depthOffset: 0.02,
      depthOffsetU: 0.002,
    },
  ],
  cameraDistance: { value: 1.2, u: 0.02 },
  plane: {
    corners: [
      [100, 20],
      [900, 20],
      [900, 230],
      [100, 230],
    ],
    width: 0.2666,
    height: 0.07,
    u: 1e-4,
    cornerU: 0.3,
    depthOffset: 0,
    depthOffsetU: 0.002,
  },
  lens: {
    k1: { value: -0.1, u: 0.01 },
    k2: { value: 0, u: 0.01 },
    centre: [512, 128],
    centreU: 2,
    focal: { value: 3600, u: 60 },
    correlation: 0,
  },
};

const MODELS = [
  'auto',
  'uniform',
  'constantAcceleration',
  'quadraticDrag',
  'quadraticDragPrior',
] as const;

/** Every name a budget of the exit velocity can hold, from the code that gives them. */
function allSources(): Set<string> {
  const sources = new Set(viewCauses(SCALE).map(({ source }) => source));
  for (const { source } of viewCauses({ ...SCALE, lens: null })) sources.add(source);
  const alone = determineScale(
    { ...SCALE, plane: null, lens: null },
    { width: 1024, height: 256, pixelAspect: 1 },
    [100, 128],
  );
  if (!alone.ok) throw new Error(alone.reason.message);
  for (const { source } of alone.value.sources) sources.add(source);
  for (const shot of [HIGH_SPEED, PHONE]) {
    for (const model of MODELS) {
      const { points, shared } = simulate(shot, 3);
      const options = { model, robust: true, coverage: 0.95, seed: 1 };
      const exit = budgetExit(points, shared, options);
      if (!exit.ok) throw new Error(exit.reason.message);
      for (const { source } of exit.value.report.budget) sources.add(source);
    }
  }
  return sources;
}

it('has advice of its own for every input a budget can hold', () => {
  const sources = [...allSources()].filter((source) => source !== 'end points');
  expect(sources.length).toBeGreaterThan(15);
  const general = sources.filter((source) =>
    adviceOf([line(source, 1)])[0]?.message.includes('Find out more'),
  );
  expect(general).toEqual([]);
});
