import * as v from 'valibot';
import { failure, type Outcome, success } from '../core/reason';
import { describeIssue, isRecord } from './issues';
import { SHOT_FORMAT, SHOT_VERSION, type Shot, shotSchema } from './schema';

/** Recording rates outside this range are taken for a slip, frames/s. */
export const RATE_RANGE = { lowest: 1, highest: 1e7 } as const;

/**
 * Reads a shot file's text.
 * Failures: `notJson`, `notShot`, `newerVersion`, `invalidShot` (first problem with its path, and how many more).
 */
export function parseShot(text: string): Outcome<Shot> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : 'not JSON';
    return failure(
      'notJson',
      `This is not a shot file: ${why}.`,
      'Choose a file whose name ends in .shot.json.',
      { form: 'shot', why },
    );
  }
  return validateShot(data);
}

/** As `parseShot`, for data already read. */
export function validateShot(data: unknown): Outcome<Shot> {
  if (!isRecord(data) || data.format !== SHOT_FORMAT) {
    return failure(
      'notShot',
      `This is not a shot file: its "format" is not "${SHOT_FORMAT}".`,
      'Choose a file whose name ends in .shot.json.',
      { format: SHOT_FORMAT },
    );
  }
  if (typeof data.version === 'number' && data.version > SHOT_VERSION) {
    return failure(
      'newerVersion',
      `The shot file has version ${data.version}; this program reads up to version ${SHOT_VERSION}.`,
      'Open it with the newer program that wrote it, or update this one.',
      { version: data.version, known: SHOT_VERSION },
    );
  }
  const parsed = v.safeParse(shotSchema, migrated(data));
  if (!parsed.success) return invalid(describeIssue(parsed.issues[0]), parsed.issues.length - 1);
  const problem = inconsistency(parsed.output);
  return problem === null ? success(parsed.output) : invalid(problem, 0);
}

/**
 * Versions that lack nothing but keys that may be left out: `edits.seeds` came with 2, `sound.microphone.toBackstop`
 * with 3, start position, leak and losses of the launcher with 4, `footage.reading` with 5.
 */
const OLDER: readonly unknown[] = [1, 2, 3, 4];

/** Before version 5 fields stayed woven; frames are counted so in what such a file says of them. */
function asReadBefore(footage: unknown): unknown {
  return isRecord(footage) ? { reading: { raw: null, fields: 'whole' }, ...footage } : footage;
}

/** A shot file of an older version as this one would have written it. */
export const migrated = (data: Record<string, unknown>): Record<string, unknown> =>
  OLDER.includes(data.version)
    ? { ...data, version: SHOT_VERSION, footage: asReadBefore(data.footage) }
    : data;

const invalid = (problem: string, more: number): Outcome<never> =>
  failure(
    'invalidShot',
    `The shot file cannot be used: ${problem}${more > 0 ? ` (and ${more} more)` : ''}.`,
    'Correct that entry; the schema is in schemas/shot.schema.json.',
    { why: problem, more },
  );

/** What the schema alone cannot say; null where nothing is wrong. */
function inconsistency(shot: Shot): string | null {
  const rate = shot.timing.recordingRate;
  if (shot.timing.source === 'recordingRate' && rate === null) {
    return '"timing.recordingRate" is missing while "timing.source" asks for it';
  }
  if (rate !== null && (rate.value < RATE_RANGE.lowest || rate.value > RATE_RANGE.highest)) {
    return `"timing.recordingRate.value": ${rate.value} frames/s is outside ${RATE_RANGE.lowest} to ${RATE_RANGE.highest}`;
  }
  const exposure = shot.timing.exposure;
  if (exposure !== null && rate !== null && exposure.value * rate.value > 1.0001) {
    return `"timing.exposure.value": ${exposure.value} s is longer than a frame at ${rate.value} frames/s`;
  }
  if (shot.scale.lengths.length === 0 && shot.scale.plane === null) {
    return '"scale": neither a known length nor a plane is given to set it';
  }
  for (const [i, length] of shot.scale.lengths.entries()) {
    if (Math.hypot(length.to[0] - length.from[0], length.to[1] - length.from[1]) < 1) {
      return `"scale.lengths.${i}": its two ends lie on the same pixel`;
    }
  }
  const distance = shot.scale.cameraDistance;
  for (const [i, length] of shot.scale.lengths.entries()) {
    if (distance !== null && length.depthOffset <= -distance.value) {
      return `"scale.lengths.${i}.depthOffset" puts the length behind the camera`;
    }
  }
  const triangle = impossibleTriangle(shot.sound);
  if (triangle !== null) return triangle;
  const burst = shot.seals?.muzzle?.burstBetween;
  if (burst && burst[1] <= burst[0]) {
    return '"seals.muzzle.burstBetween": the second frame must come after the first';
  }
  const frames = shot.edits.manualPoints.map((point) => point.frame);
  if (new Set(frames).size < frames.length) {
    return '"edits.manualPoints": two points are given for one frame';
  }
  return null;
}

/** Beyond so many standard uncertainties the sides of a triangle cannot be what is stated. */
const SLACK = 4;

/** Muzzle, backstop and microphone make a triangle: no side is longer than the two others together. */
function impossibleTriangle(sound: Shot['sound']): string | null {
  const backstop = sound?.backstopDistance ?? null;
  const toBackstop = sound?.microphone.toBackstop ?? null;
  if (sound === null || toBackstop === null) return null;
  if (backstop === null) {
    return '"sound.microphone.toBackstop" is given without "sound.backstopDistance"';
  }
  const { distance } = sound.microphone;
  const least = Math.abs(distance.value - backstop.value);
  const most = distance.value + backstop.value;
  const slack = SLACK * Math.hypot(distance.u, backstop.u, toBackstop.u);
  return toBackstop.value < least - slack || toBackstop.value > most + slack
    ? `"sound.microphone.toBackstop.value": ${toBackstop.value} m cannot be, with the microphone ${distance.value} m and the backstop ${backstop.value} m from the muzzle`
    : null;
}
