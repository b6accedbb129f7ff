import type { Launcher } from '../../../src/launch/types';

/** The teaching launcher of the demo clips, with losses as textbooks give them. */
export const LAUNCHER_B: Launcher = {
  boreDiameter: 0.031,
  barrelLength: 1.4,
  ballDiameter: 0.03,
  ballMass: 0.0019,
  startPosition: 0.016,
  residualPressure: 1000,
  sealBurstPressure: 5000,
  air: { temperature: 293.15, pressure: 101_325, humidity: 0 },
  outsidePressure: 101_325,
  gapDischarge: 0.7,
  entranceLoss: 0.5,
  wallFriction: 0.02,
  ballFriction: 0,
};

/** The worked case of the published tables: 2.7 g in a bore of 40 mm, no losses, into a vacuum, 20 degrees. */
export const WORKED: Launcher = {
  ...LAUNCHER_B,
  ...{ boreDiameter: 0.04, ballDiameter: 0.04, ballMass: 0.0027, startPosition: 0.02 },
  ...{ residualPressure: 0, outsidePressure: 0, gapDischarge: 0, entranceLoss: 0, wallFriction: 0 },
};

/** The worked case with this way for the ball's centre, m. */
export const workedOver = (way: number): Launcher => ({ ...WORKED, barrelLength: 0.02 + way });

/**
 * Exit speed m/s and time ms by way m: (a) constant force, (b) momentum, (c1) simple wave in a full barrel, (c2)
 * quasi-steady flow from a reservoir. Formulas: Ayars and Buchholtz, Am. J. Phys. 72 (2004) 961; Seigel, AGARDograph 91
 * (1965), from memory; evaluated apart from this program with an adaptive integrator at 1e-9, (c1) also with a
 * Lagrangian gas code that agrees to 0.01 %.
 */
export const TABLE: readonly {
  readonly way: number;
  readonly speeds: readonly [a: number, b: number, c1: number, c2: number];
  readonly times: readonly [a: number, c1: number, c2: number];
}[] = [
  { way: 0.5, speeds: [217.16, 181.12, 169.64, 203.61], times: [4.605, 5.26, 4.709] },
  { way: 1, speeds: [307.11, 222.69, 221.04, 272.43], times: [6.512, 7.807, 6.799] },
  { way: 1.5, speeds: [376.13, 243.54, 255.66, 317.82], times: [7.976, 9.9, 8.489] },
  { way: 2, speeds: [434.32, 255.81, 282.2, 351.55], times: [9.21, 11.758, 9.981] },
  { way: 3, speeds: [531.93, 269.15, 322.25, 400.99], times: [11.28, 15.059, 12.632] },
  { way: 4, speeds: [614.22, 275.94, 352.4, 437.32], times: [13.025, 18.02, 15.015] },
];
