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
  readonly bar: { readonly centre: readonly [number, number]; readonly depthOffsetU: number };
  readonly sound: {
    readonly microphone: Stated;
    readonly backstop: Stated;
    readonly offset: Stated;
  } | null;
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
  readonly exitTime: number;
  readonly burstTime: number;
  readonly onsetTime: number;
}

export function drawTruth(spec: ClipSpec, random: Random): Truth {
  const draw = (stated: Stated): number => random.normal(stated.value, stated.u);
  const rate = draw(spec.rate);
  const temperature = draw(AIR.temperature);
  const exitTime = (spec.exitFrame + random.uniform(0, 1)) / rate;
  const burstTime = exitTime - spec.seal.lead * random.uniform(0.85, 1.15);
  return {
    rate,
    exposure: draw(spec.exposure),
    lineTime: draw(spec.readout.lineTime),
    cameraDistance: draw(spec.camera.distance),
    metresPerPixel: spec.camera.metresPerPixel * random.uniform(0.99, 1.01),
    barLength: draw(BAR.length),
    barDepth: random.normal(0, spec.bar.depthOffsetU),
    ballRadius: draw(BALL.diameter) / 2,
    ballMass: draw(BALL.mass),
    boreRadius: draw(LAUNCHER.boreDiameter) / 2,
    // Dry-air gas constant and ratio of specific heats: common values, from memory.
    airDensity: draw(AIR.pressure) / (287.05 * temperature),
    soundSpeed: Math.sqrt(1.4 * 287.05 * temperature),
    soundOffset: spec.sound ? draw(spec.sound.offset) : 0,
    microphone: spec.sound ? draw(spec.sound.microphone) : 0,
    backstop: spec.sound ? draw(spec.sound.backstop) : 0,
    velocity: (spec.shot?.velocity ?? 0) * random.uniform(0.97, 1.03),
    exitTime,
    burstTime,
    onsetTime: burstTime - spec.seal.bulge * random.uniform(0.9, 1.1),
  };
}
