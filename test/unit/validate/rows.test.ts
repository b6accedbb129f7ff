import { describe, expect, it } from 'vitest';
import { blur } from '../../validate/classes/blur';
import { clean } from '../../validate/classes/clean';
import { compressed } from '../../validate/classes/compressed';
import { hidden } from '../../validate/classes/hidden';
import type { FrameRecord, ShotRecord } from '../../validate/record';
import { randomStream } from '../../validate/render/random';

/** What an estimator does to an error drawn from the bound. */
interface Fault {
  /** Added along the flight, or towards lamp or what hides, bounds. */
  readonly shift?: number;
  readonly pull?: number;
  /** Errors and stated uncertainties times this. */
  readonly worse?: number;
  readonly stated?: number;
  /** Of so many frames one is refused. */
  readonly refuses?: number;
}

/** Records of an estimator as good as the bound but for its fault, over all cells of the classes. */
function shotsOf(bound: number, fault: Fault): ShotRecord[] {
  const { shift = 0, pull = 0, worse = 1, stated = 1, refuses = Number.POSITIVE_INFINITY } = fault;
  const random = randomStream(11);
  const shots: ShotRecord[] = [];
  for (const radius of [12, 16, 20, 24, 28, 40]) {
    for (const contrastToNoise of [5, 10, 15, 20, 30, 50]) {
      for (const surface of ['even', 'matt', 'even', 'matt', 'even', 'matt'] as const) {
        const frames = Array.from({ length: 15 }, (_, i): FrameRecord => {
          const error = () => worse * bound * random.normal(0, 1);
          const variance = (worse * stated * bound) ** 2;
          return {
            refused: i % refuses === refuses - 1 ? 'noBall' : null,
            along: error() + shift * bound,
            across: error(),
            pull: error() + pull * bound,
            varAlong: variance,
            varAcross: variance,
            cov: 0,
            boundAlong: bound,
            boundAcross: bound,
            visible: 0.5,
            hiddenBy: ['flange', 'frame edge', 'fragment'][i % 3] ?? 'flange',
          };
        });
        shots.push({ radius, contrastToNoise, surface, noise: 4, sweep: 1, crf: 23, frames });
      }
    }
  }
  return shots;
}

/** Figures of the rows that fail. */
const failing = (rows: ReturnType<typeof clean.conclude>['rows']): string[] => [
  ...new Set(rows.filter(({ passed }) => !passed).map(({ figure }) => figure)),
];

const classes = [
  { validation: clean, bound: 0.02 },
  { validation: blur, bound: 0.02 },
  { validation: hidden, bound: 0.02 },
  { validation: compressed, bound: 0.04 },
];

describe('rows of the classes', () => {
  it.each(classes)(
    'pass an estimator at the bound with a true covariance ($validation.name)',
    (c) => {
      const { rows } = c.validation.conclude([shotsOf(c.bound, {})]);
      expect(failing(rows)).toEqual([]);
      expect(rows.every(({ n }) => n > 0)).toBe(true);
    },
  );

  it.each(classes)('fail one that states too little or too much ($validation.name)', (c) => {
    for (const stated of [0.85, 1.2]) {
      const { rows } = c.validation.conclude([shotsOf(c.bound, { stated })]);
      expect(failing(rows)).toContain('within 1 u');
    }
  });

  it.each(classes)('fail one that refuses a fifth ($validation.name)', (c) => {
    const { rows } = c.validation.conclude([shotsOf(c.bound, { refuses: 5 })]);
    expect(failing(rows)).toEqual(['refused']);
    expect(rows.find(({ figure }) => figure === 'refused')?.note).toMatch(/\d+ noBall/);
  });

  it('fail one drawn along the flight or towards the lamp by half the bound', () => {
    for (const fault of [{ shift: 0.5 }, { pull: 0.5 }]) {
      expect(failing(clean.conclude([shotsOf(0.02, fault)]).rows)).toContain('bias over bound');
    }
  });

  it('allow a bias of 0.002 px, however small the bound', () => {
    expect(failing(clean.conclude([shotsOf(0.001, { pull: 1.7 })]).rows)).toEqual([]);
    expect(failing(clean.conclude([shotsOf(0.001, { pull: 2.5 })]).rows)).toEqual([
      'bias over bound',
    ]);
  });

  it('fail one worse than the limit of each class', () => {
    const at = (c: (typeof classes)[number], worse: number) =>
      failing(c.validation.conclude([shotsOf(c.bound, { worse })]).rows);
    expect(at(classes[0] as (typeof classes)[0], 1.5)).toContain('RMS over bound');
    expect(at(classes[1] as (typeof classes)[0], 1.8)).toContain('RMS over bound');
    expect(at(classes[2] as (typeof classes)[0], 2.2)).toContain('RMS over bound');
    expect(at(classes[3] as (typeof classes)[0], 2.2)).toContain('RMS');
  });

  it('allow a part of a class the scatter over its few shots, no more', () => {
    const cells = (worse: number) =>
      clean
        .conclude([shotsOf(0.02, { worse })])
        .rows.filter(({ of, figure }) => of.startsWith('radius') && figure === 'RMS over bound')
        .filter(({ n }) => n > 0);
    expect(cells(1.3).some(({ value, passed }) => value > 1.3 && passed)).toBe(true);
    expect(cells(1.2).every(({ passed }) => passed)).toBe(true);
    expect(cells(1.8).some(({ passed }) => passed)).toBe(false);
  });

  it('do not let one wild shot excuse its part', () => {
    const shots = shotsOf(0.02, {}).map((shot, i) => ({
      ...shot,
      frames: shot.frames.map((frame) => (i === 0 ? { ...frame, along: 2 } : frame)),
    }));
    const { rows } = clean.conclude([shots]);
    const part = rows.find(
      ({ of, figure }) => of === 'radius 12 px, c/n 5' && figure.startsWith('RMS'),
    );
    expect(part).toMatchObject({ passed: false });
  });

  it('fail one drawn towards what hides the ball', () => {
    expect(failing(hidden.conclude([shotsOf(0.05, { pull: 1.5 })]).rows)).toEqual(['bias']);
  });

  it('fail where nothing was measured', () => {
    expect(failing(clean.conclude([]).rows)).toContain('RMS over bound');
  });
});
