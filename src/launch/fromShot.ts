import { failure, type Outcome, success } from '../core/reason';
import type { Shot } from '../shot/schema';
import type { LauncherInputKey, LauncherUncertainty } from './inputs';
import type { Launcher } from './types';

/** What a shot states of its launcher, and how well. */
export interface StatedLauncher {
  readonly launcher: Launcher;
  readonly uncertainty: LauncherUncertainty;
}

/** A ball laid into the rear end without a measured place: this far from the seal, m. */
const AT_THE_SEAL = { value: 1e-3, u: 5e-4 };

/**
 * The launcher of a shot as the models take it, m, kg, Pa, K. The muzzle looks into the air of the room.
 * Failures: `noLauncher`, `noResidualPressure`, `noSealBurstPressure`.
 */
export function launcherOf({
  launcher,
  ball,
  air,
}: Pick<Shot, 'launcher' | 'ball' | 'air'>): Outcome<StatedLauncher> {
  if (launcher === null) {
    return failure(
      'noLauncher',
      'The shot states no launcher, so no model can say how fast it should fire.',
      'State bore diameter, barrel length, residual pressure and seal burst pressure.',
    );
  }
  const { residualPressure, sealBurstPressure } = launcher;
  if (residualPressure === null) {
    return failure(
      'noResidualPressure',
      'The pressure left in the barrel is not stated.',
      'State the absolute residual pressure that the gauge showed before the shot.',
    );
  }
  if (sealBurstPressure === null) {
    return failure(
      'noSealBurstPressure',
      'The pressure that opens the muzzle seal is not stated.',
      'State by how much the pressure inside exceeds that outside when the seal opens, as measured on seals of the same make.',
    );
  }
  const startPosition = launcher.startPosition ?? {
    value: ball.diameter.value / 2 + AT_THE_SEAL.value,
    u: AT_THE_SEAL.u,
  };
  const { boreDiameter, barrelLength, gapDischarge, entranceLoss } = launcher;
  const { wallFriction, ballFriction } = launcher;
  const plain = {
    ...{ boreDiameter, barrelLength, startPosition, residualPressure, sealBurstPressure },
    ...{ gapDischarge, entranceLoss, wallFriction, ballFriction },
    ballDiameter: ball.diameter,
    ballMass: ball.mass,
  };
  const stated: Record<LauncherInputKey, { readonly value: number; readonly u: number }> = {
    ...plain,
    airPressure: air.pressure,
    airTemperature: air.temperature,
    airHumidity: air.humidity,
  };
  const values = mapped(plain, ({ value }) => value);
  return success({
    launcher: {
      ...values,
      air: mapped(air, ({ value }) => value),
      outsidePressure: air.pressure.value,
    },
    uncertainty: mapped(stated, ({ u }) => u),
  });
}

const mapped = <Key extends string, In, Out>(
  record: Readonly<Record<Key, In>>,
  f: (value: In) => Out,
): Record<Key, Out> =>
  Object.fromEntries(Object.entries<In>(record).map(([key, value]) => [key, f(value)])) as Record<
    Key,
    Out
  >;
