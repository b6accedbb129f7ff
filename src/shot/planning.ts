import * as v from 'valibot';
import { estimate, finite, list, nonNegative } from './resultSchema';
import { shotSchema } from './schema';

const positive = v.pipe(finite, v.gtValue(0));
const picture = { width: positive, height: positive };

const seen = {
  /** Exposure of the picture that the light was read off, s. */
  exposure: positive,
  /** How many times that picture's light the plan has. */
  factor: positive,
};
/** How the ball stands out in a picture taken already, and what the plan changes. */
const light = v.variant('kind', [
  v.strictObject({
    ...{ kind: v.literal('contrast'), ...seen },
    /** Ball minus background over the standard deviation of a pixel. */
    contrastToNoise: positive,
  }),
  v.strictObject({
    ...{ kind: v.literal('sensor'), ...seen },
    /** Electrons a pixel holds at white. */
    fullWell: positive,
    /** Standard deviation with the lens covered, electrons. */
    readNoise: nonNegative,
    /** Grey of ball and background as shares of white. */
    ball: nonNegative,
    background: nonNegative,
    bitDepth: positive,
  }),
]);

const { ball, air, coverage, timing, launcher } = shotSchema.entries;

/** What a person means to film: the ball flies to the right along the picture's middle row. SI, image lengths in pixels. */
const plan = v.strictObject({
  name: v.string(),
  /** Exit speed to be expected, m/s; its uncertainty widens what is checked, not the budget. */
  speed: estimate,
  ...{ ball, air },
  camera: v.strictObject({
    ...picture,
    /** Frames/s. */
    rate: estimate,
    exposure: estimate,
    readout: timing.entries.readout,
  }),
  view: v.strictObject({
    /** Field of view along the flight, in its plane, m. */
    across: positive,
    /** Of it, what lies before the muzzle plane, m. */
    beforeMuzzle: nonNegative,
  }),
  /** One known length lying below the flight, marked at both ends. */
  scale: v.strictObject({
    length: estimate,
    endpointU: nonNegative,
    /** How much farther from the camera than the flight it lies, m. */
    depthOffset: estimate,
    /** Lens to flight line; null: not going to be measured. */
    cameraDistance: v.nullable(estimate),
  }),
  /** Standard uncertainty with which the muzzle plane will be marked, px. */
  muzzleU: nonNegative,
  picture: v.strictObject({
    /** Blur of an edge by the optics, standard deviation, px. */
    softness: nonNegative,
    /** Whether the film is kept with loss (H.264 and its like). */
    coded: v.boolean(),
    light,
  }),
  coverage,
});

const cameraMode = v.strictObject({ rate: positive, ...picture });
/** What a camera gives up for a higher rate. */
const cameraTrade = v.variant('kind', [
  v.strictObject({
    ...{ kind: v.literal('pixelRate'), pixelsPerSecond: positive },
    ...{ mostWidth: positive, mostHeight: positive },
  }),
  v.strictObject({ kind: v.literal('modes'), modes: list(cameraMode) }),
]);

/** A plan as the browser keeps it: with the camera's limits, and the launcher and model that a speed is taken from. */
const planningSchema = v.strictObject({
  ...{ plan, trade: cameraTrade },
  launcher: v.nonNullable(v.nonOptional(launcher)),
  model: v.picklist(['constantForce', 'momentum', 'gasDynamics', 'expansion']),
});

type Frozen<T> = { readonly [Key in keyof T]: T[Key] };
export type Light = Frozen<v.InferOutput<typeof light>>;
export type Plan = Frozen<v.InferOutput<typeof plan>>;
/** One way a camera can be set. */
export type CameraMode = Frozen<v.InferOutput<typeof cameraMode>>;
export type CameraTrade = Frozen<v.InferOutput<typeof cameraTrade>>;
export type PlanningInputs = Frozen<v.InferOutput<typeof planningSchema>>;
/** The launch models by name. */
export type ModelName = PlanningInputs['model'];

/** What was kept of a plan; null: it cannot be read. */
export function readPlanning(data: unknown): PlanningInputs | null {
  const parsed = v.safeParse(planningSchema, data);
  return parsed.success ? parsed.output : null;
}
