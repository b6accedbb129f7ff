import { failure, type Outcome, success } from '../core/reason';
import type { BudgetEntry, Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import { effectiveDof } from '../uncertainty/quantity';
import type { SeriesShot, SharedEffect } from './types';

const marks = ({ scale, muzzle }: Shot): unknown => [
  scale.lengths.map(({ from, to, endpointU }) => [from, to, endpointU]),
  muzzle?.point,
];
const depths = ({ scale }: Shot): unknown => [
  scale.lengths.map(({ depthOffset, depthOffsetU }) => [depthOffset, depthOffsetU]),
  scale.cameraDistance,
];
const lens = ({ scale }: Shot): unknown => scale.lens;
const plane = ({ setupId, scale }: Shot): unknown => [setupId, scale.plane];
const flightModel = ({ ball, fit }: Shot): unknown => [ball, fit.model];

/**
 * What a line of the budget stems from. Two shots in which all of it is equal share the input: the same bar, the same
 * marks, the same ball. Where it differs in anything the shots are taken as independent in that line.
 */
const ORIGINS: Readonly<Record<string, (shot: Shot) => unknown>> = {
  'known length': ({ scale }) => scale.lengths.map(({ length, u }) => [length, u]),
  'ends of the known length': (shot) => [shot.setupId, marks(shot)],
  'depth of the known length': (shot) => [shot.setupId, depths(shot)],
  'camera distance': (shot) => [shot.setupId, depths(shot)],
  'lens distortion': lens,
  'lens centre': lens,
  'focal length': lens,
  'corners of the plane': plane,
  'size of the plane': plane,
  'depth of the plane': plane,
  'recording rate': ({ timing }) => timing.recordingRate,
  'time per line': ({ timing }) => timing.readout,
  'place of the muzzle plane': (shot) => [shot.setupId, shot.muzzle],
  'ball diameter': ({ ball }) => ball.diameter,
  'ball mass': ({ ball }) => ball.mass,
  'air temperature': ({ air }) => air.temperature,
  'air pressure': ({ air }) => air.pressure,
  'air humidity': ({ air }) => air.humidity,
  'air drag as expected': flightModel,
  'air drag left out': flightModel,
  'loss in the muzzle zone as expected': flightModel,
  'shape of the muzzle zone': flightModel,
  'choice of model': flightModel,
};

/** What errs anew in every frame, whichever way it is known. */
const isOwn = ({ source, type }: BudgetEntry): boolean => type === 'A' || source === 'frame times';

/** What has no origin of its own above is taken as shared by all shots of one setup: the cautious side. */
const setupOf = ({ setupId }: Shot): unknown => setupId;

/**
 * A shot's exit velocity for a series, from its budget. What the film itself told (Type A) is the shot's own, and so
 * is the rounding of its frame times; what was known otherwise (Type B) is shared with every shot whose inputs for that line are equal.
 * Failures: the reason the shot has no exit velocity.
 */
export function seriesShot(
  shot: Shot,
  result: Pick<Result, 'shot' | 'exitVelocity' | 'budget'>,
): Outcome<SeriesShot> {
  const { exitVelocity, budget } = result;
  if (!('value' in exitVelocity)) return { ok: false, reason: exitVelocity.unavailable };
  const own = budget.exitVelocity.filter(isOwn);
  const u = Math.hypot(...own.map(({ contribution }) => contribution));
  if (!(u > 0)) {
    return failure(
      'shotWithoutUncertainty',
      `The budget of ${result.shot} holds nothing that is the shot's own, by which it could be weighed.`,
      'Reduce the shot anew.',
      { form: 'budget', shot: result.shot },
    );
  }
  return success({
    name: result.shot,
    value: exitVelocity.value,
    u,
    dof: effectiveDof(u, own),
    shared: budget.exitVelocity.filter((entry) => !isOwn(entry)).map(effectIn(shot)),
  });
}

const effectIn =
  (shot: Shot) =>
  ({ source, sensitivity, u, dof }: BudgetEntry): SharedEffect => ({
    source,
    key: JSON.stringify([source, (ORIGINS[source] ?? setupOf)(shot)]),
    effect: sensitivity * u,
    dof,
  });
