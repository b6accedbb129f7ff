import * as v from 'valibot';

/**
 * The shot file: everything a person states about one shot. Lengths in metres, times in seconds,
 * image positions in pixels of the upright image (pixel centres at whole numbers, y down).
 * This is the one place it is defined; `npm run schemas` writes the JSON Schema from it.
 */
export const SHOT_FORMAT = 'exitframe-shot';
export const SHOT_VERSION = 5;

const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const nonNegative = v.pipe(finite, v.minValue(0));
const fraction = v.pipe(finite, v.minValue(0), v.maxValue(1));
const frameIndex = v.pipe(v.number(), v.integer(), v.minValue(0));
const point = v.pipe(v.tuple([finite, finite]), v.readonly());
const direction = v.pipe(
  v.tuple([finite, finite]),
  v.check(([dx, dy]) => Math.hypot(dx, dy) > 0, 'a direction needs a length'),
  v.readonly(),
);
const rect = v.pipe(v.tuple([finite, finite, positive, positive]), v.readonly());

const measured = (value: typeof finite | typeof positive | typeof nonNegative | typeof fraction) =>
  v.pipe(v.strictObject({ value, u: nonNegative }), v.readonly());
const measuredPositive = measured(positive);
const measuredNonNegative = measured(nonNegative);

const side = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(65_535));
const byteCount = v.pipe(v.number(), v.integer(), v.minValue(0));

/** How the footage is read where it does not say so itself, or says it wrongly. */
const reading = v.strictObject({
  /** Headerless grey; null: the file has a header. */
  raw: v.optional(
    v.nullable(
      v.pipe(
        v.strictObject({
          width: side,
          height: side,
          /** Of a grey value; more than 8 lie at the lower end of two bytes. */
          bits: v.picklist([8, 10, 12, 16]),
          byteOrder: v.optional(v.picklist(['little', 'big']), 'little'),
          /** Bytes before the first frame. */
          skip: v.optional(byteCount, 0),
          /** Bytes between one frame and the next. */
          gap: v.optional(byteCount, 0),
        }),
        v.readonly(),
      ),
    ),
    null,
  ),
  /** 'auto': each field is a frame where the file says it is interlaced; 'whole': fields stay woven. */
  fields: v.optional(v.picklist(['auto', 'whole', 'topFirst', 'bottomFirst']), 'auto'),
});

const identity = {
  sha256: v.nullable(v.string()),
  reading: v.optional(v.pipe(reading, v.readonly()), { raw: null, fields: 'auto' }),
};

const footage = v.union([
  v.strictObject({ path: v.pipe(v.string(), v.nonEmpty()), ...identity }),
  v.strictObject({
    paths: v.pipe(v.array(v.pipe(v.string(), v.nonEmpty())), v.minLength(2), v.readonly()),
    ...identity,
  }),
]);

const readout = v.strictObject({
  direction: v.picklist(['down', 'up', 'right', 'left']),
  /** Seconds a line; 0 means a global shutter. */
  lineTime: measuredNonNegative,
});

const timing = v.strictObject({
  source: v.picklist(['recordingRate', 'containerTimestamps']),
  /** Frames per second as set on the camera; null only where the container's timestamps are used. */
  recordingRate: v.nullable(measuredPositive),
  exposure: v.optional(v.nullable(measuredPositive), null),
  readout: v.optional(readout, { direction: 'down', lineTime: { value: 0, u: 0 } }),
  /** `count` frames are missing after frame `after`. */
  droppedFrames: v.optional(
    v.pipe(
      v.array(
        v.strictObject({
          after: frameIndex,
          count: v.pipe(v.number(), v.integer(), v.minValue(1)),
        }),
      ),
      v.readonly(),
    ),
    [],
  ),
});

const knownLength = v.strictObject({
  from: point,
  to: point,
  length: positive,
  u: nonNegative,
  /** Standard uncertainty of each end's position along the length, pixels. */
  endpointU: v.optional(nonNegative, 0.3),
  /** How much farther from the camera than the flight line the length lies, metres; negative: nearer. */
  depthOffset: v.optional(finite, 0),
  depthOffsetU: v.optional(nonNegative, 0.002),
});

const scale = v.strictObject({
  /** Without any the plane has to set the scale. */
  lengths: v.optional(v.pipe(v.array(knownLength), v.readonly()), []),
  /** Lens to flight line; null: unknown, parallax is then left out and warned of. */
  cameraDistance: v.optional(v.nullable(measuredPositive), null),
  plane: v.optional(
    v.nullable(
      v.strictObject({
        corners: v.pipe(v.tuple([point, point, point, point]), v.readonly()),
        width: positive,
        height: positive,
        u: nonNegative,
        /** Standard uncertainty of each corner's place, pixels each way. */
        cornerU: v.optional(nonNegative, 0.3),
        /** How much farther from the camera than the flight line the rectangle lies, metres; negative: nearer. */
        depthOffset: v.optional(finite, 0),
        depthOffsetU: v.optional(nonNegative, 0.002),
      }),
    ),
    null,
  ),
  lens: v.optional(
    v.nullable(
      v.strictObject({
        k1: measured(finite),
        k2: measured(finite),
        centre: point,
        /** Standard uncertainty of the centre's place, pixels each way. */
        centreU: v.optional(nonNegative, 2),
        /** Distortion is told in terms of its value; its uncertainty is that of the distances told by it. */
        focal: measuredPositive,
        /** Correlation coefficient of k1 and k2. */
        correlation: v.optional(v.pipe(finite, v.minValue(-1), v.maxValue(1)), 0),
      }),
    ),
    null,
  ),
});

const muzzle = v.strictObject({
  point,
  /** Standard uncertainty of the plane's place along the axis, pixels. */
  u: v.optional(nonNegative, 0.5),
  /** Direction of travel; null: fitted from the path. */
  axis: v.optional(v.nullable(direction), null),
});

const seal = v.strictObject({
  /** Where the film is watched; null: found from the muzzle plane. */
  region: v.optional(v.nullable(rect), null),
  /** The seal's own plane; null: the muzzle plane. */
  plane: v.optional(v.nullable(v.strictObject({ point, u: nonNegative })), null),
  /** Last frame with the seal whole and first with it open, set by a person; null: found. */
  burstBetween: v.optional(
    v.nullable(v.pipe(v.tuple([frameIndex, frameIndex]), v.readonly())),
    null,
  ),
});

/** No hand places a point better than a thousandth of a pixel, and none worse than a frame. */
const placingU = v.pipe(finite, v.minValue(1e-3), v.maxValue(1e4));

const manualPoint = v.strictObject({
  frame: frameIndex,
  x: finite,
  y: finite,
  ux: v.optional(placingU, 0.5),
  uy: v.optional(placingU, 0.5),
});

/** Where a person says the ball is; the search starts there, the centre is still measured. */
const seedPoint = v.strictObject({ frame: frameIndex, x: finite, y: finite });

export const shotSchema = v.strictObject({
  format: v.literal(SHOT_FORMAT),
  version: v.literal(SHOT_VERSION),
  name: v.optional(v.string(), ''),
  footage,
  timing,
  scale,
  muzzle: v.optional(v.nullable(muzzle), null),
  ball: v.optional(v.strictObject({ diameter: measuredPositive, mass: measuredPositive }), {
    diameter: { value: 0.03, u: 5e-5 },
    mass: { value: 0.0019, u: 1e-5 },
  }),
  /** Where the ball may be looked for; null: the whole frame. */
  region: v.optional(v.strictObject({ flight: v.nullable(rect) }), { flight: null }),
  /** null: no seal in view. */
  seals: v.optional(
    v.nullable(
      v.strictObject({
        muzzle: v.optional(v.nullable(seal), null),
        rear: v.optional(v.nullable(seal), null),
      }),
    ),
    { muzzle: { region: null, plane: null, burstBetween: null }, rear: null },
  ),
  sound: v.optional(
    v.nullable(
      v.strictObject({
        offset: measured(finite),
        microphone: v.strictObject({
          /** From the muzzle, m. */
          distance: measuredNonNegative,
          /** From the backstop, m; null: anything the two other distances allow. */
          toBackstop: v.optional(v.nullable(measuredNonNegative), null),
        }),
        /** From the muzzle plane along the flight, m. */
        backstopDistance: v.optional(v.nullable(measuredPositive), null),
      }),
    ),
    null,
  ),
  target: v.optional(v.nullable(v.strictObject({ distance: measuredPositive })), null),
  air: v.optional(
    v.strictObject({
      temperature: measuredPositive,
      pressure: measuredPositive,
      humidity: measured(fraction),
    }),
    {
      temperature: { value: 293.15, u: 2 },
      pressure: { value: 101_325, u: 1500 },
      humidity: { value: 0.5, u: 0.2 },
    },
  ),
  launcher: v.optional(
    v.nullable(
      v.strictObject({
        boreDiameter: measuredPositive,
        /** From the rear seal to the muzzle seal, m. */
        barrelLength: measuredPositive,
        /** Absolute pressure of the air left in the barrel, Pa; null: not measured. */
        residualPressure: v.optional(v.nullable(measuredNonNegative), null),
        /** How far the pressure inside must exceed that outside to open the muzzle seal, Pa; null: not measured. */
        sealBurstPressure: v.optional(v.nullable(measuredNonNegative), null),
        /** The ball's centre before the shot, m from the rear seal; null: the ball lies close to that seal. */
        startPosition: v.optional(v.nullable(measuredPositive), null),
        /** Coefficient of discharge of the gap around the ball; 0: no leak. */
        gapDischarge: v.optional(measured(fraction), { value: 0.7, u: 0.15 }),
        /** Loss of total pressure at the rear opening, in units of half density times velocity squared. */
        entranceLoss: v.optional(measuredNonNegative, { value: 0.5, u: 0.2 }),
        /** Darcy's friction factor of the air on the barrel. */
        wallFriction: v.optional(measuredNonNegative, { value: 0.02, u: 0.005 }),
        /** Friction of the ball on the barrel, N. */
        ballFriction: v.optional(measuredNonNegative, { value: 0, u: 0 }),
      }),
    ),
    null,
  ),
  edits: v.optional(
    v.strictObject({
      rejectedFrames: v.optional(v.pipe(v.array(frameIndex), v.readonly()), []),
      manualPoints: v.optional(v.pipe(v.array(manualPoint), v.readonly()), []),
      seeds: v.optional(v.pipe(v.array(seedPoint), v.readonly()), []),
    }),
    { rejectedFrames: [], manualPoints: [], seeds: [] },
  ),
  fit: v.optional(
    v.strictObject({
      model: v.picklist([
        'auto',
        'uniform',
        'constantAcceleration',
        'quadraticDrag',
        'quadraticDragPrior',
        'boreAndFlight',
        'averaged',
      ]),
      robust: v.optional(v.boolean(), true),
    }),
    { model: 'auto', robust: true },
  ),
  coverage: v.optional(v.pipe(finite, v.gtValue(0), v.ltValue(1)), 0.95),
  setupId: v.optional(v.nullable(v.string()), null),
  notes: v.optional(v.string(), ''),
  seed: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0)), 1),
});

/** What a setup file shares with the shots that follow it. Lost frames are a clip's own. */
export const setupParts = { timing: v.omit(timing, ['droppedFrames']), scale, muzzle };

/** A shot with every default filled in. */
export type Shot = v.InferOutput<typeof shotSchema>;
export type ShotInput = v.InferInput<typeof shotSchema>;
export type Timing = Shot['timing'];
export type Readout = Timing['readout'];
export type Scale = Shot['scale'];
export type KnownLength = Scale['lengths'][number];
export type Muzzle = NonNullable<Shot['muzzle']>;
export type Seal = v.InferOutput<typeof seal>;
export type LauncherInputs = NonNullable<Shot['launcher']>;
export type FitChoice = Shot['fit']['model'];
