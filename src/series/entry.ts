import { isAvailable } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Conditions, NotebookEntry } from '../shot/notebook';
import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import { seriesShot } from './seriesShot';
import type { SeriesShot } from './types';

const NOT_REDUCED = {
  unavailable: {
    code: 'notReduced',
    message: 'This shot has not been reduced yet.',
    remedy: 'Open its film, measure it and add it to the notebook again.',
  },
};

/** A shot as the notebook keeps it; `result` null: not reduced yet. */
export function entryOf(shot: Shot, result: Result | null, name: string): NotebookEntry {
  const part = result === null ? null : seriesShot(shot, result);
  return {
    ...{ name, shot, notes: shot.notes, used: true },
    exitVelocity: result?.exitVelocity ?? NOT_REDUCED,
    lead: result?.lead ?? NOT_REDUCED,
    conditions: conditionsOf(shot),
    own: part?.ok ? { u: part.value.u, dof: part.value.dof } : null,
    shared: part?.ok ? part.value.shared : [],
  };
}

const conditionsOf = ({ launcher, ball, air }: Shot): Conditions => ({
  barrelLength: launcher?.barrelLength ?? null,
  boreDiameter: launcher?.boreDiameter ?? null,
  residualPressure: launcher?.residualPressure ?? null,
  sealBurstPressure: launcher?.sealBurstPressure ?? null,
  ballDiameter: ball.diameter,
  ballMass: ball.mass,
  airPressure: air.pressure,
  airTemperature: air.temperature,
});

/** The entry for statistics. Failures: why it has no exit velocity, `shotWithoutUncertainty`. */
export function seriesShotOf({
  name,
  exitVelocity,
  own,
  shared,
}: Pick<NotebookEntry, 'name' | 'exitVelocity' | 'own' | 'shared'>): Outcome<SeriesShot> {
  if (!isAvailable(exitVelocity)) return { ok: false, reason: exitVelocity.unavailable };
  const { u, dof } = own ?? exitVelocity;
  if (!(u > 0)) {
    return failure(
      'shotWithoutUncertainty',
      `The shot ${name} states no uncertainty of its own, by which it could be weighed.`,
      'State one, or leave the shot out.',
      { form: 'stated', shot: name },
    );
  }
  return success({ name, value: exitVelocity.value, u, dof, shared });
}
