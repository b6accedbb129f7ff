import { airDensity, moistSoundSpeed } from '../core/air';

/** Gas constant of dry air, J/(kg K) (ISO 2533:1975). */
const DRY_AIR = 287.05287;

/** A perfect gas: p = rho R T with a constant ratio of specific heats. */
export interface Gas {
  /** Ratio of specific heats. */
  readonly gamma: number;
  /** Specific gas constant R, J/(kg K). */
  readonly constant: number;
}

/** Velocity along the barrel, m/s, density, kg/m^3, and pressure, Pa. */
export interface GasState {
  readonly density: number;
  readonly velocity: number;
  readonly pressure: number;
}

/** Temperature K, pressure Pa, relative humidity 0..1. */
export interface Air {
  readonly temperature: number;
  readonly pressure: number;
  readonly humidity: number;
}

/**
 * The perfect gas that air is taken for. Dry: gamma 1.4 and R of ISO 2533:1975. Vapour changes R as it changes the
 * density (CIPM-2007) and gamma as it changes the speed of sound; it is taken not to condense. Real air is denser than
 * the perfect gas by 0.04 % at room conditions; below 200 K and above 600 K gamma is off by more than 1 %.
 */
export function gasOf({ temperature, pressure, humidity }: Air): Gas {
  const dry = airDensity(temperature, pressure, 0);
  const constant = (DRY_AIR * dry) / airDensity(temperature, pressure, humidity);
  const speed = moistSoundSpeed(temperature, pressure, humidity);
  return { gamma: speed ** 2 / (constant * temperature), constant };
}

/** Density, kg/m^3, at a pressure, Pa, and a temperature, K. */
export const densityAt = ({ constant }: Gas, pressure: number, temperature: number): number =>
  pressure / (constant * temperature);

/** Speed of sound, m/s, at a temperature, K. */
export const soundSpeedAt = ({ gamma, constant }: Gas, temperature: number): number =>
  Math.sqrt(gamma * constant * temperature);

/** Specific heat at constant pressure, J/(kg K). */
export const heatAtConstantPressure = ({ gamma, constant }: Gas): number =>
  (gamma * constant) / (gamma - 1);

/**
 * Mass flux through a frictionless opening from gas at rest, kg/(s m^2) of opening: isentropic to the back pressure,
 * choked below the critical ratio (2 / (gamma + 1))^(gamma / (gamma - 1)), 0.528 for air (textbook, e.g. Shapiro, The
 * Dynamics and Thermodynamics of Compressible Fluid Flow, ch. 4). Pressures Pa, density kg/m^3.
 */
export function orificeFlux(
  { gamma }: Gas,
  pressure: number,
  density: number,
  backPressure: number,
): number {
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  const ratio = Math.max(critical, Math.min(1, backPressure / pressure));
  const head = (2 * gamma) / (gamma - 1);
  return (
    ratio ** (1 / gamma) *
    Math.sqrt(head * pressure * density * Math.max(0, 1 - ratio ** ((gamma - 1) / gamma)))
  );
}
