import type { Launcher } from './types';

/** A number of the launcher that a prediction depends on. */
export interface LauncherInput {
  /** As named in a budget. */
  readonly source: string;
  readonly unit: string;
  get(launcher: Launcher): number;
  set(launcher: Launcher, value: number): Launcher;
}

const plain = (
  source: string,
  unit: string,
  key: Exclude<keyof Launcher, 'air'>,
): LauncherInput => ({
  ...{ source, unit },
  get: (launcher) => launcher[key],
  set: (launcher, value) => ({ ...launcher, [key]: value }),
});

const ofAir = (
  source: string,
  unit: string,
  key: 'temperature' | 'pressure' | 'humidity',
): LauncherInput => ({
  ...{ source, unit },
  get: ({ air }) => air[key],
  set: (launcher, value) => {
    // One barometer for both ends, unless the muzzle looks into an evacuated box.
    const open = key === 'pressure' && launcher.outsidePressure === launcher.air.pressure;
    const moved = { ...launcher, air: { ...launcher.air, [key]: value } };
    return open ? { ...moved, outsidePressure: value } : moved;
  },
});

/** Every input that may carry an uncertainty, by its key. */
export const LAUNCHER_INPUTS = {
  boreDiameter: plain('bore diameter', 'm', 'boreDiameter'),
  barrelLength: plain('barrel length', 'm', 'barrelLength'),
  ballDiameter: plain('ball diameter', 'm', 'ballDiameter'),
  ballMass: plain('ball mass', 'kg', 'ballMass'),
  startPosition: plain('start position', 'm', 'startPosition'),
  residualPressure: plain('residual pressure', 'Pa', 'residualPressure'),
  sealBurstPressure: plain('seal burst pressure', 'Pa', 'sealBurstPressure'),
  airPressure: ofAir('air pressure', 'Pa', 'pressure'),
  airTemperature: ofAir('air temperature', 'K', 'temperature'),
  airHumidity: ofAir('air humidity', '', 'humidity'),
  gapDischarge: plain('discharge of the gap', '', 'gapDischarge'),
  entranceLoss: plain('entrance loss', '', 'entranceLoss'),
  wallFriction: plain('wall friction', '', 'wallFriction'),
  ballFriction: plain('ball friction', 'N', 'ballFriction'),
} as const satisfies Record<string, LauncherInput>;

export type LauncherInputKey = keyof typeof LAUNCHER_INPUTS;

/** Standard uncertainties of the inputs, SI; those left out are taken as exact. */
export type LauncherUncertainty = Partial<Record<LauncherInputKey, number>>;
