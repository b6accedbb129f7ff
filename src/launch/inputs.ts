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
  key: Exclude<keyof Launcher, 'air'>,
  source: string,
  unit: string,
): LauncherInput => ({
  ...{ source, unit },
  get: (launcher) => launcher[key],
  set: (launcher, value) => ({ ...launcher, [key]: value }),
});

const ofAir = (
  key: 'temperature' | 'pressure' | 'humidity',
  source: string,
  unit: string,
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
  boreDiameter: plain('boreDiameter', 'bore diameter', 'm'),
  barrelLength: plain('barrelLength', 'barrel length', 'm'),
  ballDiameter: plain('ballDiameter', 'ball diameter', 'm'),
  ballMass: plain('ballMass', 'ball mass', 'kg'),
  startPosition: plain('startPosition', 'start position', 'm'),
  residualPressure: plain('residualPressure', 'residual pressure', 'Pa'),
  sealBurstPressure: plain('sealBurstPressure', 'seal burst pressure', 'Pa'),
  airPressure: ofAir('pressure', 'air pressure', 'Pa'),
  airTemperature: ofAir('temperature', 'air temperature', 'K'),
  airHumidity: ofAir('humidity', 'air humidity', ''),
  gapDischarge: plain('gapDischarge', 'discharge of the gap', ''),
  entranceLoss: plain('entranceLoss', 'entrance loss', ''),
  wallFriction: plain('wallFriction', 'wall friction', ''),
  ballFriction: plain('ballFriction', 'ball friction', 'N'),
} as const satisfies Record<string, LauncherInput>;

export type LauncherInputKey = keyof typeof LAUNCHER_INPUTS;

/** Standard uncertainties of the inputs, SI; those left out are taken as exact. */
export type LauncherUncertainty = Partial<Record<LauncherInputKey, number>>;
