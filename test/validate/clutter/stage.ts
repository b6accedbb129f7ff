import type { Point, Thing } from './canvas';
import { type Random, seeded } from './random';
import { cover, type Light, slab, sphere, still } from './shapes';
import { smoothNoise } from './texture';

/** How a finished frame is coded. */
export type Coding =
  | { readonly codec: 'h264'; readonly crf: number }
  | { readonly codec: 'mjpeg'; readonly quality: number };

/**
 * A launcher's front, a wall and a ball before clutter is added. The ball flies to the right; a film may
 * be mirrored afterwards. Lengths in px, times in frames from the middle of frame 0's exposure.
 */
export interface Stage {
  readonly random: Random;
  readonly width: number;
  readonly height: number;
  readonly frames: number;
  readonly mirrored: boolean;
  readonly radius: number;
  /** Largest shift of a shaken camera. */
  readonly shake: number;
  readonly albedo: number;
  readonly light: Light;
  /** px a frame at the muzzle; direction of flight, radians below the horizontal. */
  readonly speed: number;
  readonly slope: number;
  readonly muzzle: Point;
  readonly exitTime: number;
  readonly exposure: number;
  readonly wall: (x: number, y: number) => number;
  /** Centre of the ball, whether or not it is still whole. */
  path(time: number): Point;

  // What clutter changes:
  framesPerSecond: number;
  readonly behindBall: Thing[];
  ball: Thing;
  readonly beforeBall: Thing[];
  /** Before the launcher too. */
  readonly inFront: Thing[];
  /** The moment from which the ball is no longer whole. */
  breaksAt: number;
  /** Share of the usual light, frame by frame. */
  readonly gains: ((frame: number, x: number, y: number) => number)[];
  /** How the camera is set off, for all of the film, and how far it strays in a frame. */
  offset: Point;
  stray: (frame: number) => Point;
  /** Faults of pixels in the grey values read. */
  readonly faults: ((grey: Uint8Array, frame: number) => void)[];
  coding: Coding | null;
  /** Electrons at full scale, and of read noise. */
  readonly fullWell: number;
  readonly readNoise: number;
  readonly launcher: readonly Thing[];
}

/** Loss of speed per px of path: drag of a light ball at about a millimetre a pixel. */
const DRAG = 1.2e-4;

/** What is set by hand; the rest is drawn from the seed. */
export interface Settings {
  /** px */
  readonly radius?: number;
  /** px a frame */
  readonly speed?: number;
  /** Largest shift of a shaken camera, px. */
  readonly shake?: number;
}

export function setStage(seed: number, settings: Settings): Stage {
  const random = seeded(seed, 0);
  const width = 320;
  const height = 128;
  const drawn = { radius: random.between(10, 16), speed: random.between(5, 9), shake: 1 };
  const { radius, speed, shake } = { ...drawn, ...settings };
  const exposure = random.between(0.06, 0.4);
  const slope = random.between(-0.035, 0.035);
  const muzzle: Point = [random.between(34, 56), height / 2 + random.between(-9, 9)];
  const exitTime = random.between(4, 8);
  const backlit = random.chance(0.25);
  const albedo = backlit ? random.between(0.2, 0.3) : random.between(0.62, 0.9);
  const light = lamp(random, backlit);
  const wall = wallOf(random, backlit, height);
  const path = (time: number): Point => {
    const t = time - exitTime;
    const way = t < 0 ? speed * t : Math.log1p(DRAG * speed * t) / DRAG;
    return [muzzle[0] + way * Math.cos(slope), muzzle[1] + way * Math.sin(slope)];
  };
  const frames = Math.min(70, Math.ceil(exitTime + (width + radius - muzzle[0]) / speed) + 4);
  return {
    random: seeded(seed, 1),
    width,
    height,
    frames,
    mirrored: random.chance(0.3),
    radius,
    shake,
    albedo,
    light,
    speed,
    slope,
    muzzle,
    exitTime,
    exposure,
    wall,
    path,
    framesPerSecond: random.between(6000, 16_000),
    behindBall: [],
    ball: { nature: 'moving', at: (time) => sphere(path(time), radius, albedo, light) },
    beforeBall: [],
    inFront: [],
    breaksAt: Number.POSITIVE_INFINITY,
    gains: [],
    offset: [0, 0],
    stray: () => [0, 0],
    faults: [],
    coding: null,
    fullWell: random.between(6000, 20_000),
    readNoise: random.between(8, 20),
    launcher: launcherAt(muzzle, radius, height, random),
  };
}

/** A lamp from above and one side, so that the ball is unevenly lit. */
function lamp(random: Random, backlit: boolean): Light {
  const x = random.between(-0.6, 0.6);
  const y = random.between(-0.7, -0.2);
  const z = random.between(0.4, 0.9);
  const length = Math.hypot(x, y, z);
  return {
    towards: [x / length, y / length, z / length],
    ambient: backlit ? 0.6 : random.between(0.4, 0.6),
  };
}

/** A matt wall with faint unevenness, a bench edge and a scale bar with its divisions. */
function wallOf(random: Random, backlit: boolean, height: number): Stage['wall'] {
  const level = backlit ? random.between(0.6, 0.75) : random.between(0.1, 0.2);
  const blotches = smoothNoise(random, 37);
  const grain = smoothNoise(random, 5);
  const fall = random.between(-0.3, 0.3) / 320;
  const bench = height - 22;
  return (x, y) => {
    const plain = level * (1 + 0.08 * blotches(x, y) + 0.05 * grain(x, y) + fall * (x - 160));
    // Soft as all edges: a hard one would jump from pixel to pixel as the camera shakes.
    const below = cover(y - bench);
    const bar = cover(y - bench - 6) * cover(bench + 14 - y);
    const fromMark = Math.abs(((x + 1008.5) % 20) - 10);
    const mark = 1 - 0.6 * cover(1.5 - fromMark) * cover(bench + 11 - y);
    const table = 0.7 * level + 0.02 * grain(x, 3 * y);
    return plain * (1 - below) + below * (table * (1 - bar) + bar * 0.5 * mark);
  };
}

/** The barrel and the flange at its end, seen from the side; the muzzle plane is the flange's face. */
function launcherAt([x, y]: Point, radius: number, height: number, random: Random): Thing[] {
  const tone = random.between(0.25, 0.4);
  const rough = smoothNoise(random, 6);
  const barrel = 1.3 * radius;
  const flange = Math.min(2.3 * radius, height / 2 - 24);
  const round = (half: number) => (px: number, py: number) =>
    tone * (0.55 + 0.45 * Math.cos((1.2 * (py - y + 0.3 * half)) / half)) + 0.015 * rough(px, py);
  return [
    still(slab([-60, y - barrel, x - 8, y + barrel], round(barrel))),
    still(slab([x - 12, y - flange, x, y + flange], round(flange))),
  ];
}
