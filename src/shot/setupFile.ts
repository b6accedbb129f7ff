import * as v from 'valibot';
import { failure, type Outcome, success } from '../core/reason';
import { describeIssue, isRecord } from './issues';
import { validateShot } from './parse';
import { SHOT_FORMAT, SHOT_VERSION, type Shot, setupParts } from './schema';

export const SETUP_FORMAT = 'exitframe-setup';
const SETUP_VERSION = 1;

const count = v.pipe(v.number(), v.integer(), v.minValue(1));
const text = v.pipe(v.string(), v.nonEmpty());

/**
 * A setup, calibrated once and followed by many shots: clock, scale with lens and plane, and muzzle. Lengths in
 * metres, times in seconds, image positions in pixels of the upright image.
 */
export const setupSchema = v.strictObject({
  format: v.literal(SETUP_FORMAT),
  version: v.literal(SETUP_VERSION),
  /** Shots name it in `setupId`. */
  id: text,
  name: text,
  /** Size of the frames it was marked on, px. */
  frame: v.strictObject({ width: count, height: count }),
  ...setupParts,
  /** The still scene of the shot it was calibrated on, to tell that the camera moved; null: not measured. */
  scene: v.optional(
    v.nullable(
      v.strictObject({
        shotName: v.string(),
        footageSha256: v.nullable(v.string()),
        fingerprint: v.strictObject({
          ...{ width: count, height: count, block: count },
          levels: v.pipe(v.array(v.pipe(v.number(), v.finite())), v.readonly()),
        }),
      }),
    ),
    null,
  ),
});

export type Setup = v.InferOutput<typeof setupSchema>;

/** Reads a setup file's text. Failures: `notJson`, `notSetup`, `newerSetup`, `invalidSetup`. */
export function parseSetup(fileText: string): Outcome<Setup> {
  try {
    return validateSetup(JSON.parse(fileText));
  } catch (error) {
    const why = error instanceof Error ? error.message : 'not JSON';
    return failure(
      'notJson',
      `This is not a setup file: ${why}.`,
      'Choose a file whose name ends in .setup.json.',
      { form: 'setup', why },
    );
  }
}

/** As `parseSetup`, for data already read. */
export function validateSetup(data: unknown): Outcome<Setup> {
  if (!isRecord(data) || data.format !== SETUP_FORMAT) {
    return failure(
      'notSetup',
      `This is not a setup file: its "format" is not "${SETUP_FORMAT}".`,
      'Choose a file whose name ends in .setup.json.',
      { format: SETUP_FORMAT },
    );
  }
  if (typeof data.version === 'number' && data.version > SETUP_VERSION) {
    return failure(
      'newerSetup',
      `The setup file has version ${data.version}; this program reads up to version ${SETUP_VERSION}.`,
      'Open it with the newer program that wrote it, or update this one.',
      { version: data.version, known: SETUP_VERSION },
    );
  }
  const parsed = v.safeParse(setupSchema, data);
  if (!parsed.success) return invalid(`${describeIssue(parsed.issues[0])}.`);
  const { timing, scale, muzzle, scene } = parsed.output;
  // What no schema can say of clock and scale is said of a shot's.
  const shot = validateShot({
    ...{ format: SHOT_FORMAT, version: SHOT_VERSION, timing, scale, muzzle },
    footage: { path: 'any', sha256: null },
  });
  if (!shot.ok) return invalid(shot.reason.message);
  const print = scene?.fingerprint;
  const squares =
    print && Math.floor(print.width / print.block) * Math.floor(print.height / print.block);
  return print && print.levels.length !== squares
    ? invalid(`"scene.fingerprint.levels": ${print.levels.length} values for ${squares} squares.`)
    : success(parsed.output);
}

const invalid = (problem: string): Outcome<never> =>
  failure(
    'invalidSetup',
    `The setup file cannot be used: ${problem}`,
    'Correct that entry; the schema is in schemas/setup.schema.json.',
    { why: problem },
  );

/** The setup that a shot stands on. The muzzle has to be marked. */
export function setupOf(
  {
    timing,
    scale,
    muzzle,
  }: Pick<Shot, 'timing' | 'scale'> & { muzzle: NonNullable<Shot['muzzle']> },
  about: Pick<Setup, 'id' | 'name' | 'frame' | 'scene'>,
): Setup {
  const { droppedFrames: _, ...clock } = timing;
  return {
    ...{ format: SETUP_FORMAT, version: SETUP_VERSION, ...about },
    ...{ timing: clock, scale, muzzle },
  };
}
