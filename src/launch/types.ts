import type { Outcome } from '../core/reason';
import type { Air } from './gas';
import type { Profile } from './profiles';

/** A launcher and its ball, as every model takes it. Lengths m, pressures Pa (absolute unless said otherwise). */
export interface Launcher {
  readonly boreDiameter: number;
  /** From the rear seal to the muzzle seal. */
  readonly barrelLength: number;
  readonly ballDiameter: number;
  /** kg */
  readonly ballMass: number;
  /** The ball's centre before the shot, from the rear seal; at least half its diameter. */
  readonly startPosition: number;
  /** Air left in the barrel when the rear seal opens, at the temperature outside. */
  readonly residualPressure: number;
  /** How far the pressure inside must exceed that outside to open the muzzle seal. */
  readonly sealBurstPressure: number;
  /** The air around, that drives the ball. */
  readonly air: Air;
  /** Pressure on the outside of the muzzle; that of the air unless the ball leaves into an evacuated box. */
  readonly outsidePressure: number;
  /** Coefficient of discharge of the gap around the ball, 0..1; 0: no leak. */
  readonly gapDischarge: number;
  /** Loss of total pressure at the rear opening, in units of half density times velocity squared. */
  readonly entranceLoss: number;
  /** Darcy's friction factor of the air on the barrel; 0: none. */
  readonly wallFriction: number;
  /** Friction of the ball on the barrel, N. */
  readonly ballFriction: number;
}

/** The ball's way through the barrel, one entry a sample, all arrays of one length. */
export interface LaunchCurve {
  /** s after the rear seal opens */
  readonly time: readonly number[];
  /** m, the ball's centre from the rear seal */
  readonly position: readonly number[];
  /** m/s */
  readonly speed: readonly number[];
  /** m/s^2 */
  readonly acceleration: readonly number[];
  /** Pa, at the ball's back */
  readonly basePressure: readonly number[];
  /** Pa, at the ball's front */
  readonly frontPressure: readonly number[];
  /** Pa, inside the muzzle seal; its outside pressure once it is open. */
  readonly sealPressure: readonly number[];
}

export interface SealOpening {
  /** s after the rear seal opens */
  readonly time: number;
  /** What opened it: the air trapped before the ball, or the ball's leading point. */
  readonly cause: 'pressure' | 'contact';
  /** Exit time minus this, s. */
  readonly lead: number;
  /** How far the ball's centre was from the muzzle plane, m. */
  readonly distance: number;
}

export interface Exit {
  /** s after the rear seal opens, when the ball's centre crosses the muzzle plane. */
  readonly time: number;
  /** m/s */
  readonly speed: number;
}

/** What a model says of a shot. */
export interface Launch {
  readonly curve: LaunchCurve;
  /** Or why the ball does not leave. */
  readonly exit: Outcome<Exit & { readonly seal: SealOpening }>;
  /** Of a model on a mesh that was refined. */
  readonly mesh?: MeshChange;
  /** Of a model that follows the gas along the barrel, for a diagram of its waves. */
  readonly profiles?: readonly Profile[];
}

/** How far the results stood on the last refinement of a mesh. */
export interface MeshChange {
  readonly cells: number;
  /**
   * Change of the exit speed and of the lead from half as many cells, m/s and s. The error of a scheme of first order
   * or better is no larger; 0 where the ball does not leave.
   */
  readonly speed: number;
  readonly lead: number;
}

export type Model = (launcher: Launcher) => Launch;
