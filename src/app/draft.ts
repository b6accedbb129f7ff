import type { Estimate } from '../core/estimate';
import { AS_FOUND, type FootageInfo, type Reading } from '../core/film';
import { failure, type Outcome, type Reason, type ReasonValues, success } from '../core/reason';
import { validateShot } from '../shot/parse';
import {
  type KnownLength,
  type LauncherInputs,
  type Scale,
  type Seal,
  SHOT_FORMAT,
  SHOT_VERSION,
  type Shot,
} from '../shot/schema';

/** A length drawn on the film whose value may still have to be typed. */
export type DraftLength = Omit<KnownLength, 'length'> & { readonly length: number | null };

type Plane = NonNullable<Scale['plane']>;
export type PlaneCorners = Plane['corners'];

/** A rectangle marked on the film whose sides may still have to be typed. */
export type DraftPlane = Omit<Plane, 'width' | 'height'> & {
  readonly width: number | null;
  readonly height: number | null;
};

/** A shot being written: it may still lack its recording rate, a known length or the muzzle plane. */
export type ShotDraft = Readonly<Omit<Shot, 'scale'>> & {
  readonly scale: Readonly<Omit<Scale, 'lengths' | 'plane'>> & {
    readonly lengths: readonly DraftLength[];
    readonly plane: DraftPlane | null;
  };
};

export const STEPS = ['footage', 'clock', 'scale', 'ball', 'seal', 'result', 'models'] as const;
export type StepName = (typeof STEPS)[number];

/** Something a person has to state before the shot can be reduced. */
export interface Missing {
  readonly step: StepName;
  readonly reason: Reason;
}

export const EMPTY_SEAL: Seal = { region: null, plane: null, burstBetween: null };

/** Above this the container's rate is no playback rate but the camera's own (phones), frames/s. */
const PLAYBACK_RATES_UP_TO = 61;

const PLACEHOLDER: KnownLength = {
  from: [0, 0],
  to: [100, 0],
  length: 1,
  u: 0,
  endpointU: 0.3,
  depthOffset: 0,
  depthOffsetU: 0.002,
};

/** Fills in the defaults of the shot file, which are written down in its schema alone. */
function withDefaults(input: Record<string, unknown>): Shot {
  const outcome = validateShot({ format: SHOT_FORMAT, version: SHOT_VERSION, ...input });
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
}

/** The draft for footage that no shot file came with. */
export function newDraft(
  info: FootageInfo,
  paths: readonly string[],
  timestamps: Float64Array | null,
  reading: Reading = AS_FOUND,
): ShotDraft {
  const ownClock =
    timestamps !== null && timestamps.length > 1 && (info.playbackRate ?? 0) > PLAYBACK_RATES_UP_TO;
  const shot = withDefaults({
    name: info.name.replace(/\.[^.]+$/, ''),
    footage: footageOf(paths, null, reading),
    timing: { source: 'containerTimestamps', recordingRate: null },
    scale: { lengths: [PLACEHOLDER] },
  });
  return {
    ...shot,
    timing: { ...shot.timing, source: ownClock ? 'containerTimestamps' : 'recordingRate' },
    scale: { ...shot.scale, lengths: [] },
  };
}

/** A launcher with everything but bore and length left as the shot file leaves it out. */
export function newLauncher(boreDiameter: Estimate, barrelLength: Estimate): LauncherInputs {
  const { launcher } = withDefaults({
    footage: { path: 'none', sha256: null },
    timing: { source: 'containerTimestamps', recordingRate: null },
    scale: { lengths: [PLACEHOLDER] },
    launcher: { boreDiameter, barrelLength },
  });
  if (launcher === null) throw new Error('The schema drops the launcher.');
  return launcher;
}

export function footageOf(
  paths: readonly string[],
  sha256: string | null,
  reading: Reading = AS_FOUND,
): Shot['footage'] {
  const [first = ''] = paths;
  return paths.length > 1 ? { paths, sha256, reading } : { path: first, sha256, reading };
}

/** The same of footage whose hash is known. */
export const withHash = <Of extends Pick<Shot, 'footage'>>(
  shot: Of,
  sha256: string | null,
): Of => ({
  ...shot,
  footage: { ...shot.footage, sha256 },
});

export const footagePaths = (footage: Shot['footage']): readonly string[] =>
  'paths' in footage ? footage.paths : [footage.path];

/** A shot whose film is read another way: what was stated of frames by their numbers is gone. */
export const readAnew = (draft: ShotDraft, footage: ShotDraft['footage']): ShotDraft => ({
  ...draft,
  footage,
  timing: { ...draft.timing, droppedFrames: [] },
  seals: draft.seals && {
    muzzle: withoutBurst(draft.seals.muzzle),
    rear: withoutBurst(draft.seals.rear),
  },
  edits: { rejectedFrames: [], manualPoints: [], seeds: [] },
});

const withoutBurst = (seal: Seal | null) => seal && { ...seal, burstBetween: null };

/** The known lengths that have a value. */
const statedLengths = (lengths: readonly DraftLength[]): KnownLength[] =>
  lengths.flatMap((one) => (one.length === null ? [] : [{ ...one, length: one.length }]));

/** The plane once its sides have values. */
function statedPlane(plane: DraftPlane | null): Plane | null {
  if (plane === null || plane.width === null || plane.height === null) return null;
  return { ...plane, width: plane.width, height: plane.height };
}

/** The scale as far as it is stated. */
export const statedScale = (scale: ShotDraft['scale']): Scale => ({
  ...scale,
  lengths: statedLengths(scale.lengths),
  plane: statedPlane(scale.plane),
});

/** What still has to be stated, in the order of the work. */
export function missingInputs(draft: ShotDraft): readonly Missing[] {
  const missing: Missing[] = [];
  const lacks = (
    step: StepName,
    code: string,
    message: string,
    remedy: string,
    values?: ReasonValues,
  ) =>
    missing.push({
      step,
      reason: { code, message, remedy, ...(values === undefined ? {} : { values }) },
    });
  if (draft.timing.source === 'recordingRate' && draft.timing.recordingRate === null) {
    lacks(
      'clock',
      'noRate',
      'The recording rate is not known yet.',
      'Type the rate that was set on the camera; the rate written in the file is often only the playback rate.',
    );
  }
  if (draft.scale.lengths.length === 0 && draft.scale.plane === null) {
    lacks(
      'scale',
      'noLength',
      'No known length has been drawn yet.',
      'Draw a line between two marks whose distance is known, in the plane of flight, or mark a rectangle of known size.',
    );
  }
  const unstated = draft.scale.lengths.findIndex((one) => one.length === null);
  if (unstated >= 0) {
    lacks(
      'scale',
      'lengthUnstated',
      `Length ${unstated + 1} is drawn, but its value is not typed yet.`,
      'Type the distance between the two marks, or remove the line.',
      { number: unstated + 1 },
    );
  }
  const { plane } = draft.scale;
  if (plane !== null && statedPlane(plane) === null) {
    lacks(
      'scale',
      'planeUnstated',
      'The plane is marked, but its width or height is not typed yet.',
      'Type both sides of the rectangle, or remove it.',
    );
  }
  if (draft.muzzle === null) {
    lacks(
      'scale',
      'noMuzzle',
      'The muzzle plane is not marked yet.',
      'Mark the end of the tube on the film: the exit velocity is stated there.',
    );
  }
  return missing;
}

/** The shot, complete and checked, or the first thing that is missing or wrong. */
export function completeShot(draft: ShotDraft): Outcome<Shot> {
  const [first] = missingInputs(draft);
  if (first !== undefined) return { ok: false, reason: first.reason };
  return validateShot({ ...draft, scale: statedScale(draft.scale) });
}

/** A draft read back from storage, or why it cannot be used. What still lacks a value is kept. */
export function validateDraft(data: unknown): Outcome<ShotDraft> {
  const draft = data as Partial<ShotDraft> | null;
  const lengths = draft?.scale?.lengths;
  if (typeof draft !== 'object' || draft === null || !Array.isArray(lengths)) {
    return failure('notDraft', 'The saved inputs cannot be read.');
  }
  const filled = lengths.map((one: DraftLength) => ({ ...one, length: one?.length ?? 1 }));
  const plane = draft.scale?.plane ?? null;
  const outcome = validateShot({
    ...draft,
    timing: { ...draft.timing, source: 'containerTimestamps' },
    scale: {
      ...draft.scale,
      lengths: filled.length > 0 ? filled : [PLACEHOLDER],
      plane: plane && { ...plane, width: plane.width ?? 1, height: plane.height ?? 1 },
    },
  });
  if (!outcome.ok) return outcome;
  const source = draft.timing?.source === 'recordingRate' ? 'recordingRate' : 'containerTimestamps';
  return success({
    ...outcome.value,
    timing: { ...outcome.value.timing, source },
    scale: { ...outcome.value.scale, lengths, plane },
  });
}
