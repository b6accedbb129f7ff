import { Canvas, hidden, type Point } from './canvas';
import { codeAndDecode } from './coding';
import { addKind, type Kind } from './kinds';
import { seeded } from './random';
import { type Settings, type Stage, setStage } from './stage';

export interface FrameTruth {
  /** The image of the ball's centre at mid-exposure, px. */
  readonly at: Point;
  /** Share of the disc that is in the frame and not hidden, 0..1. */
  readonly visible: number;
  /** False from the break-up on. */
  readonly whole: boolean;
}

/** A rendered film and what it shows. */
export interface ClutteredFilm {
  readonly kinds: readonly Kind[];
  readonly width: number;
  readonly height: number;
  readonly frames: readonly Uint8Array[];
  readonly truth: readonly FrameTruth[];
  readonly radius: number;
  readonly framesPerSecond: number;
  /** Exposure as a share of the frame interval. */
  readonly exposure: number;
  readonly muzzle: Point;
  /** px a frame at the muzzle. */
  readonly speed: number;
  /** First frame with the ball broken; null: it stays whole. */
  readonly brokenFrom: number | null;
}

/** Draws a film with the given kinds of clutter; the same seed and kinds always give the same film. */
export async function renderFilm(
  seed: number,
  kinds: readonly Kind[],
  settings: Settings = {},
): Promise<ClutteredFilm> {
  const stage = setStage(seed, settings);
  for (const kind of kinds) addKind(kind, stage);
  const { width, height, frames, exposure, speed, mirrored, offset } = stage;
  const over = [...stage.beforeBall, ...stage.launcher, ...stage.inFront];
  const canvas = new Canvas(width, height, stage.wall, [...stage.behindBall, stage.ball, ...over]);
  const noise = seeded(seed, 2);
  const raw: Uint8Array[] = [];
  const truth: FrameTruth[] = [];
  for (let frame = 0; frame < frames; frame++) {
    const [strayX, strayY] = stage.stray(frame);
    const shift: Point = [offset[0] + strayX, offset[1] + strayY];
    const light = canvas.draw({ time: frame, length: exposure, speed, shift });
    for (const gain of stage.gains) brighten(light, width, (x, y) => gain(frame, x, y));
    const grey = read(light, stage, noise.normal);
    for (const fault of stage.faults) fault(grey, frame);
    raw.push(mirrored ? mirror(grey, width) : grey);
    truth.push(truthOf(stage, over, frame, shift));
  }
  const muzzle: Point = [stage.muzzle[0] + offset[0], stage.muzzle[1] + offset[1]];
  return {
    kinds,
    width,
    height,
    frames: stage.coding === null ? raw : await codeAndDecode(raw, width, height, stage.coding),
    truth,
    radius: stage.radius,
    framesPerSecond: stage.framesPerSecond,
    exposure,
    muzzle: mirrored ? [width - 1 - muzzle[0], muzzle[1]] : muzzle,
    speed,
    brokenFrom: Number.isFinite(stage.breaksAt) ? Math.ceil(stage.breaksAt) : null,
  };
}

function truthOf(stage: Stage, over: Stage['beforeBall'], frame: number, shift: Point): FrameTruth {
  const { width, height, radius, mirrored } = stage;
  const [x, y] = stage.path(frame);
  const shapes = over.flatMap((thing) => thing.at(frame) ?? []);
  const SAMPLES = 12;
  let seen = 0;
  let all = 0;
  for (let j = 0; j < SAMPLES; j++) {
    for (let i = 0; i < SAMPLES; i++) {
      const u = ((i + 0.5) / SAMPLES) * 2 - 1;
      const v = ((j + 0.5) / SAMPLES) * 2 - 1;
      if (u * u + v * v > 1) continue;
      all++;
      const px = x + radius * u;
      const py = y + radius * v;
      const sx = px + shift[0];
      const sy = py + shift[1];
      const inside = sx > -0.5 && sy > -0.5 && sx < width - 0.5 && sy < height - 0.5;
      if (inside && hidden(shapes, px, py) < 0.5) seen++;
    }
  }
  const sx = x + shift[0];
  return {
    at: [mirrored ? width - 1 - sx : sx, y + shift[1]],
    visible: seen / all,
    whole: frame < stage.breaksAt,
  };
}

function brighten(
  light: Float32Array,
  width: number,
  gain: (x: number, y: number) => number,
): void {
  for (let p = 0; p < light.length; p++) {
    light[p] = (light[p] as number) * gain(p % width, Math.floor(p / width));
  }
}

/** Grey values 16..235 of a linear sensor: shot noise and read noise, in electrons. */
function read(
  light: Float32Array,
  { fullWell, readNoise }: Stage,
  normal: () => number,
): Uint8Array {
  const grey = new Uint8Array(light.length);
  const readVariance = readNoise ** 2;
  for (let p = 0; p < light.length; p++) {
    const signal = Math.max(0, (light[p] as number) * fullWell);
    const electrons = signal + normal() * Math.sqrt(signal + readVariance);
    grey[p] = Math.min(255, Math.max(0, Math.round(16 + (219 * electrons) / fullWell)));
  }
  return grey;
}

function mirror(grey: Uint8Array, width: number): Uint8Array {
  return grey.map((_, p) => grey[p - (p % width) + width - 1 - (p % width)] as number);
}
