import type { Estimate } from '../core/estimate';
import type { ImagePoint } from '../core/units';
import type { LauncherInputs, Seal, Shot } from '../shot/schema';
import {
  type DraftLength,
  type DraftPlane,
  EMPTY_SEAL,
  newLauncher,
  type PlaneCorners,
  type ShotDraft,
} from './draft';

/** Every change a person can make to a shot, as pure functions from draft to draft. */
type Change = (draft: ShotDraft) => ShotDraft;

export const setName =
  (name: string): Change =>
  (draft) => ({ ...draft, name });

export const setNotes =
  (notes: string): Change =>
  (draft) => ({ ...draft, notes });

export const setTiming =
  (timing: Partial<Shot['timing']>): Change =>
  (draft) => ({ ...draft, timing: { ...draft.timing, ...timing } });

export const setScale =
  (scale: Partial<ShotDraft['scale']>): Change =>
  (draft) => ({ ...draft, scale: { ...draft.scale, ...scale } });

/** Where a new length is drawn until it is dragged to its marks: the middle half of the image. */
export function newLength(width: number, height: number, ordinal: number): DraftLength {
  const y = Math.round(height * Math.min(0.9, 0.7 + 0.06 * ordinal));
  return {
    from: [Math.round(width * 0.25), y],
    to: [Math.round(width * 0.75), y],
    length: null,
    u: 0,
    endpointU: 0.3,
    depthOffset: 0,
    depthOffsetU: 0.002,
  };
}

export const addLength =
  (length: DraftLength): Change =>
  (draft) =>
    setScale({ lengths: [...draft.scale.lengths, length] })(draft);

export const changeLength =
  (index: number, change: Partial<DraftLength>): Change =>
  (draft) =>
    setScale({
      lengths: draft.scale.lengths.map((one, i) => (i === index ? { ...one, ...change } : one)),
    })(draft);

export const removeLength =
  (index: number): Change =>
  (draft) =>
    setScale({ lengths: draft.scale.lengths.filter((_, i) => i !== index) })(draft);

/** Where a new plane is marked until its corners are dragged to theirs: the middle half of the image. */
export function newPlane(width: number, height: number): DraftPlane {
  const [left, right] = [Math.round(width * 0.25), Math.round(width * 0.75)];
  const [top, bottom] = [Math.round(height * 0.25), Math.round(height * 0.75)];
  return {
    corners: [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    width: null,
    height: null,
    u: 0,
    cornerU: 0.3,
    depthOffset: 0,
    depthOffsetU: 0.002,
  };
}

export const changePlane =
  (change: Partial<DraftPlane>): Change =>
  (draft) =>
    draft.scale.plane === null
      ? draft
      : setScale({ plane: { ...draft.scale.plane, ...change } })(draft);

/** The corners with one of them elsewhere. */
export function withCorner(
  [a, b, c, d]: PlaneCorners,
  corner: number,
  at: ImagePoint,
): PlaneCorners {
  const place = (i: number, now: ImagePoint) => (i === corner ? at : now);
  return [place(0, a), place(1, b), place(2, c), place(3, d)];
}

export const setMuzzle =
  (muzzle: Shot['muzzle']): Change =>
  (draft) => ({ ...draft, muzzle });

export const setBall =
  (ball: Partial<Shot['ball']>): Change =>
  (draft) => ({ ...draft, ball: { ...draft.ball, ...ball } });

export const setAir =
  (air: Partial<Shot['air']>): Change =>
  (draft) => ({ ...draft, air: { ...draft.air, ...air } });

/** A launcher of which no more is known than its bore and length; the rest as the shot file leaves it. */
export const stateLauncher =
  (boreDiameter: Estimate, barrelLength: Estimate): Change =>
  (draft) => ({ ...draft, launcher: newLauncher(boreDiameter, barrelLength) });

export const changeLauncher =
  (change: Partial<LauncherInputs>): Change =>
  (draft) =>
    draft.launcher === null ? draft : { ...draft, launcher: { ...draft.launcher, ...change } };

export const setFlightRegion =
  (flight: Shot['region']['flight']): Change =>
  (draft) => ({ ...draft, region: { flight } });

export const setSealInView =
  (inView: boolean): Change =>
  (draft) => ({
    ...draft,
    seals: inView ? { muzzle: EMPTY_SEAL, rear: null } : null,
  });

export const changeSeal =
  (change: Partial<Seal>): Change =>
  (draft) => ({
    ...draft,
    seals: {
      rear: draft.seals?.rear ?? null,
      muzzle: { ...(draft.seals?.muzzle ?? EMPTY_SEAL), ...change },
    },
  });

/** Null: the sound is left out. */
export const setSound =
  (sound: Shot['sound']): Change =>
  (draft) => ({ ...draft, sound });

/** Without a backstop there is no distance to it. */
export const setBackstop =
  (backstopDistance: Estimate | null): Change =>
  (draft) => {
    const { sound } = draft;
    if (sound === null) return draft;
    const microphone =
      backstopDistance === null ? { ...sound.microphone, toBackstop: null } : sound.microphone;
    return setSound({ ...sound, microphone, backstopDistance })(draft);
  };

export const setFit =
  (fit: Partial<Shot['fit']>): Change =>
  (draft) => ({ ...draft, fit: { ...draft.fit, ...fit } });

export const setCoverage =
  (coverage: number): Change =>
  (draft) => ({ ...draft, coverage });

export const setFrameRejected =
  (frame: number, rejected: boolean): Change =>
  (draft) => {
    const others = draft.edits.rejectedFrames.filter((one) => one !== frame);
    const rejectedFrames = rejected ? [...others, frame].sort((a, b) => a - b) : others;
    return { ...draft, edits: { ...draft.edits, rejectedFrames } };
  };

/** Puts the ball's centre of a frame by hand; the frame is used again if it had been rejected. */
export const placePoint =
  (frame: number, [x, y]: ImagePoint): Change =>
  (draft) => {
    const others = draft.edits.manualPoints.filter((one) => one.frame !== frame);
    const before = draft.edits.manualPoints.find((one) => one.frame === frame);
    const point = { frame, x, y, ux: before?.ux ?? 0.5, uy: before?.uy ?? 0.5 };
    return {
      ...draft,
      edits: {
        ...draft.edits,
        rejectedFrames: draft.edits.rejectedFrames.filter((one) => one !== frame),
        manualPoints: [...others, point].sort((a, b) => a.frame - b.frame),
      },
    };
  };

/** How well a hand-placed centre is known. */
export const setPointU =
  (frame: number, u: { readonly ux?: number; readonly uy?: number }): Change =>
  (draft) => ({
    ...draft,
    edits: {
      ...draft.edits,
      manualPoints: draft.edits.manualPoints.map((one) =>
        one.frame === frame ? { ...one, ...u } : one,
      ),
    },
  });

export const removePoint =
  (frame: number): Change =>
  (draft) => ({
    ...draft,
    edits: {
      ...draft.edits,
      manualPoints: draft.edits.manualPoints.filter((one) => one.frame !== frame),
    },
  });

type Seeds = Shot['edits']['seeds'];

/** Says where the ball is; one place a frame, in frame order. */
export const setSeeds =
  (seeds: Seeds): Change =>
  (draft) => ({
    ...draft,
    edits: { ...draft.edits, seeds: [...seeds].sort((a, b) => a.frame - b.frame) },
  });

export const placeSeed =
  (frame: number, [x, y]: ImagePoint): Change =>
  (draft) => {
    const others = draft.edits.seeds.filter((one) => one.frame !== frame);
    return setSeeds([...others, { frame, x, y }])(draft);
  };

export const removeSeed =
  (frame: number): Change =>
  (draft) =>
    setSeeds(draft.edits.seeds.filter((one) => one.frame !== frame))(draft);
