import { moistAir } from './gas/ends';
import { type RealLauncher, solveShot } from './gas/solve';
import type { Random } from './random';

/** A value as a person would state it, with its standard uncertainty. */
export interface Stated {
  readonly value: number;
  readonly u: number;
}

export type Direction = 'down' | 'up' | 'right' | 'left';

export type Coding =
  | { readonly kind: 'mp4'; readonly crf: number }
  | { readonly kind: 'webm'; readonly crf: number }
  | { readonly kind: 'avi'; readonly quality: number }
  | { readonly kind: 'png' };

/**
 * One clip to render: what the laboratory would write down about the shot, and the nature of the
 * shot. Lengths in metres, times in seconds, image places in upright pixels, angles in radians.
 */
export interface ClipSpec {
  readonly folder: string;
  readonly name: string;
  readonly notes: string;
  readonly seed: number;
  /** Null: a shot by itself, as fast as `shot` says. */
  readonly series: SeriesPart | null;
  readonly coding: Coding;
  readonly image: { readonly width: number; readonly height: number; readonly rotation: 0 | 90 };
  readonly frames: number;
  /** Frames per second as set; for `unevenFrames` only the nominal rate. */
  readonly rate: Stated;
  /** Real unevenness of the frame intervals, s; 0: even frames, the container plays them at 30. */
  readonly unevenFrames: number;
  readonly exposure: Stated;
  readonly readout: { readonly direction: Direction; readonly lineTime: Stated };
  readonly camera: {
    readonly metresPerPixel: number;
    readonly distance: Stated;
    /** Standard deviation of the optical blur, px. */
    readonly blur: number;
    /** Electrons at full scale, and read noise in electrons. */
    readonly fullWell: number;
    readonly readNoise: number;
  };
  readonly launcher: {
    readonly muzzle: readonly [number, number];
    readonly axisAngle: number;
    readonly axisStated: boolean;
    readonly clearTube: boolean;
    readonly ringDiameter: number;
  };
  /** Null: no ball ever leaves. */
  readonly shot: {
    readonly velocity: number;
    readonly dragCoefficient: number;
    /** Share of the velocity lost in the muzzle zone beyond drag, and its decay length. */
    readonly muzzleZone: { readonly loss: number; readonly length: number } | null;
  } | null;
  /** The frame near which the ball's centre leaves (or would have left). */
  readonly exitFrame: number;
  readonly seal: {
    /** Burst before exit; onset before burst; time the tear takes to reach the ring. */
    readonly lead: number;
    readonly bulge: number;
    readonly opening: number;
    readonly height: number;
    readonly fragments: number;
    /** Speed the fragments are thrown at is this times 0.5 to 1.8. */
    readonly speed: number;
  };
  /** `depth` behind the flight, and how well it is known. */
  readonly bar: {
    readonly centre: readonly [number, number];
    readonly depth?: number;
    readonly depthOffsetU: number;
  };
  readonly sound: {
    readonly microphone: Stated;
    readonly backstop: Stated;
    readonly offset: Stated;
  } | null;
}

/**
 * What a shot of a series shares with the others: camera, scale, marks, ball and air are drawn once for all, and the
 * gas dynamics of the launcher says when the ball leaves and how fast. SI units.
 */
export interface SeriesPart {
  readonly seed: number;
  readonly launcher: StatedLauncher;
  /** From shot to shot, about what all of them share: standard deviations, Pa. */
  readonly scatter: { readonly residualPressure: number; readonly sealBurstPressure: number };
}

export interface StatedLauncher {
  readonly boreDiameter: Stated;
  readonly barrelLength: Stated;
  readonly residualPressure: Stated;
  readonly sealBurstPressure: Stated;
  readonly startPosition: Stated;
  readonly gapDischarge: Stated;
  readonly entranceLoss: Stated;
  readonly wallFriction: Stated;
}

export const BALL = {
  diameter: { value: 0.03, u: 5e-5 },
  mass: { value: 0.0019, u: 1e-5 },
} as const;
export const BAR = { length: { value: 0.2, u: 5e-5 }, endpointU: 0.3 } as const;
export const AIR = {
  temperature: { value: 293.15, u: 1 },
  pressure: { value: 101_325, u: 300 },
  humidity: { value: 0.5, u: 0.1 },
} as const;
export const LAUNCHER = {
  boreDiameter: { value: 0.031, u: 5e-5 },
  barrelLength: { value: 1.4, u: 0.001 },
} as const;
export const MUZZLE_U = 0.5;

/** What really was so in the shot: drawn from what is stated. */
export interface Truth {
  readonly rate: number;
  readonly exposure: number;
  readonly lineTime: number;
  readonly cameraDistance: number;
  readonly metresPerPixel: number;
  readonly barLength: number;
  readonly barDepth: number;
  readonly ballRadius: number;
  readonly ballMass: number;
  readonly boreRadius: number;
  readonly airDensity: number;
  readonly soundSpeed: number;
  readonly soundOffset: number;
  readonly microphone: number;
  readonly backstop: number;
  readonly velocity: number;
  /** Just before the muzzle, m/s^2. */
  readonly boreAcceleration: number;
  readonly exitTime: number;
  readonly burstTime: number;
  readonly onsetTime: number;
  /** Null: a shot by itself. */
  readonly launch: RealLauncher | null;
}

/** Cells a column of gas is solved on: halved, the exit speed changes by 0.1 % at most. */
const CELLS = 100;

/** What shots of a series share is drawn from `setup`, the rest from `shot`; one stream for a shot by itself. */
export function drawTruth(spec: ClipSpec, setup: Random, shot: Random): Truth {
  const draw = (stated: Stated): number => setup.normal(stated.value, stated.u);
  const rate = draw(spec.rate);
  const temperature = draw(AIR.temperature);
  const exitTime = (spec.exitFrame + shot.uniform(0, 1)) / rate;
  const chosenLead = spec.seal.lead * shot.uniform(0.85, 1.15);
  const exposure = draw(spec.exposure);
  const lineTime = draw(spec.readout.lineTime);
  const cameraDistance = draw(spec.camera.distance);
  const metresPerPixel = spec.camera.metresPerPixel * setup.uniform(0.99, 1.01);
  const barLength = draw(BAR.length);
  const barDepth = setup.normal(spec.bar.depth ?? 0, spec.bar.depthOffsetU);
  const ballRadius = draw(BALL.diameter) / 2;
  const ballMass = draw(BALL.mass);
  const boreRadius = draw(LAUNCHER.boreDiameter) / 2;
  const pressure = draw(AIR.pressure);
  const soundOffset = spec.sound ? draw(spec.sound.offset) : 0;
  const microphone = spec.sound ? draw(spec.sound.microphone) : 0;
  const backstop = spec.sound ? draw(spec.sound.backstop) : 0;
  const chosen = (spec.shot?.velocity ?? 0) * shot.uniform(0.97, 1.03);
  const bulge = spec.seal.bulge * shot.uniform(0.9, 1.1);
  const ball = { ball: 2 * ballRadius, mass: ballMass, bore: 2 * boreRadius };
  const launch = spec.series && {
    ...ball,
    ...drawLauncher(spec.series, setup, shot),
    room: moistAir(temperature, pressure, draw(AIR.humidity)),
  };
  const solved = launch && solveShot(launch, CELLS);
  const lead = solved ? solved.exitTime - solved.burstTime : chosenLead;
  const velocity = solved?.velocity ?? chosen;
  const burstTime = exitTime - lead;
  return {
    ...{ rate, exposure, lineTime, cameraDistance, metresPerPixel, barLength, barDepth },
    ...{ ballRadius, ballMass, boreRadius, soundOffset, microphone, backstop },
    // Dry-air gas constant and ratio of specific heats: common values, from memory.
    airDensity: pressure / (287.05 * temperature),
    soundSpeed: Math.sqrt(1.4 * 287.05 * temperature),
    velocity,
    // Half of what it is on average, where nothing is solved.
    boreAcceleration: solved?.acceleration ?? (0.5 * velocity ** 2) / (2 * 1.4),
    ...{ exitTime, burstTime, launch },
    onsetTime: burstTime - bulge,
  };
}

function drawLauncher({ launcher, scatter }: SeriesPart, setup: Random, shot: Random) {
  const draw = (stated: Stated): number => setup.normal(stated.value, stated.u);
  return {
    start: draw(launcher.startPosition),
    discharge: draw(launcher.gapDischarge),
    entranceLoss: draw(launcher.entranceLoss),
    friction: draw(launcher.wallFriction),
    residual: draw(launcher.residualPressure) + shot.normal(0, scatter.residualPressure),
    burst: draw(launcher.sealBurstPressure) + shot.normal(0, scatter.sealBurstPressure),
    // Each tube was measured by itself.
    length: shot.normal(launcher.barrelLength.value, launcher.barrelLength.u),
  };
}
