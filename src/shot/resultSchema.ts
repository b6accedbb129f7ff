import * as v from 'valibot';
import type { Estimate, Quantity, Unavailable } from '../core/estimate';
import type { Reason } from '../core/reason';
import { RESULT_FORMAT, RESULT_VERSION, type Result } from './result';
import { shotSchema } from './schema';

/**
 * `Result` (./result) as a schema: what a result file is checked against and what `npm run schemas`
 * writes as JSON Schema. The compiler keeps the two alike: here one way, in its test the other.
 */
export const finite = v.pipe(v.number(), v.finite());
export const nonNegative = v.pipe(finite, v.minValue(0));
const fraction = v.pipe(finite, v.minValue(0), v.maxValue(1));
const frameIndex = v.pipe(v.number(), v.integer(), v.minValue(0));
export const list = <Schema extends v.GenericSchema>(item: Schema) =>
  v.pipe(v.array(item), v.readonly());
const pair = <Schema extends v.GenericSchema>(item: Schema) =>
  v.pipe(v.tuple([item, item]), v.readonly());

/** What stands in a sentence, for those who say it in another language. */
const values = v.exactOptional(
  v.pipe(v.record(v.string(), v.union([finite, v.string()])), v.readonly()),
);
const reason = v.strictObject({
  code: v.string(),
  message: v.string(),
  remedy: v.exactOptional(v.string()),
  values,
}) satisfies v.GenericSchema<Reason>;
const unavailable = v.strictObject({ unavailable: reason }) satisfies v.GenericSchema<Unavailable>;
const estimateEntries = { value: finite, u: nonNegative };
export const estimate = v.strictObject(estimateEntries) satisfies v.GenericSchema<Estimate>;
const quantityEntries = {
  ...estimateEntries,
  interval: pair(finite),
  coverage: fraction,
  dof: v.nullable(nonNegative),
};
const quantity = v.strictObject(quantityEntries) satisfies v.GenericSchema<Quantity>;
export const reported = v.union([quantity, unavailable]);

const position = v.strictObject({
  frame: frameIndex,
  time: finite,
  x: v.nullable(finite),
  y: v.nullable(finite),
  ux: v.nullable(nonNegative),
  uy: v.nullable(nonNegative),
  cov: v.nullable(finite),
  s: v.nullable(finite),
  us: v.nullable(nonNegative),
  visible: fraction,
  shift: pair(finite),
  used: v.boolean(),
  manual: v.boolean(),
  why: v.nullable(reason),
});

const budgetEntry = v.strictObject({
  source: v.string(),
  type: v.picklist(['A', 'B']),
  distribution: v.picklist(['normal', 'student', 'rectangular', 'triangular', 'discrete']),
  u: nonNegative,
  unit: v.string(),
  sensitivity: finite,
  contribution: nonNegative,
  dof: v.nullable(nonNegative),
});

const fit = v.strictObject({
  model: v.string(),
  parameters: list(v.strictObject({ name: v.string(), unit: v.string(), ...estimateEntries })),
  covariance: list(list(finite)),
  chiSquare: nonNegative,
  dof: nonNegative,
  residuals: list(finite),
  downWeighted: frameIndex,
  compared: list(
    v.strictObject({
      model: v.string(),
      chiSquare: nonNegative,
      dof: nonNegative,
      aicc: finite,
      weight: fraction,
      evidenceRatio: v.nullable(v.pipe(finite, v.minValue(1))),
      exitVelocity: finite,
      u: nonNegative,
    }),
  ),
  checks: list(
    v.strictObject({
      code: v.string(),
      passed: v.boolean(),
      message: v.string(),
      remedy: v.nullable(v.string()),
      values,
    }),
  ),
});

const monteCarlo = v.strictObject({
  trials: v.pipe(v.number(), v.integer(), v.minValue(1)),
  ...estimateEntries,
  interval: pair(finite),
  agrees: v.boolean(),
});

const sealBurst = v.union([
  v.strictObject({
    ...quantityEntries,
    bulgeOnset: reported,
    between: pair(frameIndex),
    posterior: v.strictObject({ times: list(finite), density: list(nonNegative) }),
  }),
  v.strictObject({ unavailable: reason, bounds: pair(v.nullable(finite)) }),
]);

const flight = v.strictObject({
  elevation: reported,
  kineticEnergy: reported,
  momentum: reported,
  boreAcceleration: reported,
  deceleration: reported,
  dragCoefficient: reported,
  target: v.nullable(
    v.strictObject({
      time: reported,
      speedBefore: reported,
      speedAfter: reported,
      energyGivenUp: reported,
    }),
  ),
});

const sound = v.strictObject({
  burst: reported,
  minusFilm: reported,
  agrees: v.nullable(v.boolean()),
  impact: reported,
  meanSpeed: reported,
});

export const resultSchema = v.strictObject({
  format: v.literal(RESULT_FORMAT),
  version: v.literal(RESULT_VERSION),
  shot: v.string(),
  software: v.string(),
  footageSha256: v.nullable(v.string()),
  inputs: v.nullable(
    v.strictObject({
      sha256: v.string(),
      shot: shotSchema,
      heldAgainst: v.nullable(v.string()),
    }),
  ),
  exitVelocity: reported,
  exitTime: reported,
  sealBurst,
  rearBurst: v.nullable(sealBurst),
  lead: reported,
  contact: reported,
  contactLead: reported,
  burstExitCorrelation: v.nullable(v.pipe(finite, v.minValue(-1), v.maxValue(1))),
  positions: list(position),
  fit: v.union([fit, unavailable]),
  budget: v.strictObject({
    exitVelocity: list(budgetEntry),
    sealBurst: list(budgetEntry),
    advice: list(v.strictObject({ source: v.string(), share: fraction, message: v.string() })),
  }),
  monteCarlo: v.union([monteCarlo, unavailable]),
  scale: estimate,
  axis: pair(finite),
  streak: v.union([
    v.strictObject({
      speed: quantity,
      minusFit: quantity,
      agrees: v.boolean(),
      frames: v.pipe(v.number(), v.integer(), v.minValue(1)),
    }),
    unavailable,
  ]),
  flight,
  sound: v.nullable(v.union([sound, unavailable])),
  spin: reported,
  breakUp: v.nullable(v.strictObject({ frame: frameIndex, reason })),
  rivals: list(v.strictObject({ frames: frameIndex, reason })),
  shake: v.nullable(v.strictObject({ rms: nonNegative, most: nonNegative, u: nonNegative })),
  warnings: list(
    v.strictObject({ code: v.string(), message: v.string(), remedy: v.string(), values }),
  ),
}) satisfies v.GenericSchema<unknown, Result>;
