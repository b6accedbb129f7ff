import { readFileSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, expectTypeOf, it } from 'vitest';
import { schemaFiles } from '../../../scripts/schemas';
import type { Result } from '../../../src/shot/result';
import { resultSchema } from '../../../src/shot/resultSchema';

const reason = { code: 'tooFewFrames', message: 'Fewer than three frames show the ball.' };
const missing = { unavailable: reason };
const nothingFound: Result = {
  format: 'exitframe-result',
  version: 4,
  shot: '2031-04-17 C',
  software: '0.1.0',
  footageSha256: null,
  inputs: null,
  exitVelocity: missing,
  exitTime: missing,
  sealBurst: { ...missing, bounds: [null, 0.01] },
  rearBurst: null,
  lead: missing,
  contact: missing,
  contactLead: missing,
  burstExitCorrelation: null,
  positions: [],
  fit: missing,
  budget: { exitVelocity: [], sealBurst: [], advice: [] },
  monteCarlo: missing,
  scale: { value: 1e-3, u: 1e-6 },
  axis: [1, 0],
  streak: missing,
  flight: {
    elevation: missing,
    kineticEnergy: missing,
    momentum: missing,
    boreAcceleration: missing,
    deceleration: missing,
    dragCoefficient: missing,
    target: null,
  },
  sound: null,
  spin: missing,
  breakUp: null,
  rivals: [],
  shake: null,
  warnings: [{ ...reason, remedy: 'Film more frames.' }],
};
const available = { value: 31, u: 0.05, interval: [30.9, 31.1], coverage: 0.95, dof: null };

describe('result schema', () => {
  it('describes the type Result', () => {
    expectTypeOf<v.InferOutput<typeof resultSchema>>().toExtend<Result>();
    expectTypeOf<Result>().toExtend<v.InferOutput<typeof resultSchema>>();
    expect(v.parse(resultSchema, nothingFound)).toEqual(nothingFound);
    expect(v.is(resultSchema, { ...nothingFound, exitVelocity: available })).toBe(true);
  });

  it.each([
    ['an unknown key', { extra: 1 }],
    ['not-a-number', { scale: { value: Number.NaN, u: 0 } }],
    ['a negative uncertainty', { exitVelocity: { ...available, u: -1 } }],
    ['an interval of one end', { exitVelocity: { ...available, interval: [30.9] } }],
    ['another version', { version: 1 }],
  ])('refuses %s', (_what, change) => {
    expect(v.is(resultSchema, { ...nothingFound, ...change })).toBe(false);
  });
});

describe('JSON Schemas', () => {
  it.each(schemaFiles())('$file is what `npm run schemas` writes', ({ file, text }) => {
    expect(readFileSync(file, 'utf8')).toBe(text);
  });
});
