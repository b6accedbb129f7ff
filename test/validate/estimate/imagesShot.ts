import type { ReductionInputs } from '../../../src/reduction/types';
import { validateShot } from '../../../src/shot/parse';
import { type RenderedFrame, renderFilm } from '../render/film';
import type { Random } from '../render/random';
import type { Vector } from '../render/scene';
import { drawLook, inFullView, SOFTNESS } from '../shot';
import { displacedShare, dragFactor, fly } from './positionsFlight';

/** What a careful person states; every true value is drawn from it. SI. */
const STATED = {
  rate: { value: 12_000, u: 0.6 },
  exposure: { value: 12e-6, u: 0.3e-6 },
  length: { value: 0.2, u: 5e-5 },
  /** Ends placed on engraved marks under the magnifier, px. */
  endpointU: 0.05,
  cameraDistance: { value: 1.2, u: 0.02 },
  muzzleU: 0.3,
  diameter: { value: 0.03, u: 5e-5 },
  temperature: { value: 293.15, u: 1 },
  pressure: { value: 101_325, u: 300 },
  humidity: { value: 0.5, u: 0.1 },
} as const;
/** kg; the scenario's hollow ball, and a solid one of plastic. */
export const MASSES = {
  hollow: { value: 0.0019, u: 1e-5 },
  solid: { value: 0.0165, u: 1e-5 },
} as const;
export type Build = keyof typeof MASSES;
/** As `muzzleLossOf`, `ZONE_PROFILES` and the sphere's drag of the estimator state them beforehand. */
const LOSS_SHARE = { value: 0.5, u: 0.6 } as const;
const REACH = [1.5, 3.5] as const;
const DRAG = { value: 0.47, u: 0.05 } as const;
const HEIGHTS = [64, 80, 96] as const;
const STILL_FRAMES = 5;
const CELLS = 4;
/** Mean place over the exposure, by three nodes of Gauss and Legendre. */
const NODES = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)] as const;
const SHARES = [5 / 18, 8 / 18, 5 / 18] as const;

type Stated = { readonly value: number; readonly u: number };
const about = (random: Random, { value, u }: Stated): number => value + u * random.normal(0, 1);

/** One film of a ball of this build, and the shot files a person writes for it with the bar as well placed as each of `depths`, m. */
export interface ImagesShot {
  readonly frames: readonly RenderedFrame[];
  readonly inputs: readonly ReductionInputs[];
  /** Where the ball's centre is shown in each frame, px; null: it is out of view. */
  readonly centres: readonly (Vector | null)[];
  /** m/s */
  readonly velocity: number;
  /** s after frame 0 */
  readonly exitTime: number;
}

export function takeImages(build: Build, depths: readonly number[], random: Random): ImagesShot {
  const width = 2 * Math.round(random.uniform(128, 160));
  const height = random.pick(HEIGHTS);
  const radius = random.uniform(8, Math.min(12, height / 6));
  const velocity = random.uniform(80, 200);
  const density = densityOf(random);
  const ball = {
    diameter: about(random, STATED.diameter),
    mass: about(random, MASSES[build]),
    density,
  };
  const metresPerPixel = ball.diameter / 2 / radius;
  const flight = {
    velocity,
    motion: 'drag',
    drag: dragFactor(ball, about(random, DRAG)),
    loss: displacedShare(ball) * about(random, LOSS_SHARE),
    shape: random.pick<'straight' | 'exponential'>(['straight', 'exponential']),
    reach: ball.diameter * random.uniform(...REACH),
  } as const;
  const rate = about(random, STATED.rate);
  const exposure = about(random, STATED.exposure);
  const angle = random.uniform(-0.06, 0.06);
  const forwards = random.pick([-1, 1]);
  const axis: Vector = [forwards * Math.cos(angle), Math.sin(angle)];
  const muzzle: Vector = [
    (width - 1) / 2 - forwards * ((width - 1) / 2 - radius - random.uniform(4, 12)),
    height / 2 - (axis[1] * width) / 2 + random.uniform(-2, 2),
  ];
  const {
    ball: look,
    backdrop,
    camera,
  } = drawLook(
    { radius, contrastToNoise: random.uniform(12, 40), surface: random.pick(['even', 'matt']) },
    random,
  );
  // The launcher's end stands before the ball, which comes out of it.
  const flange = {
    normal: [-axis[0], -axis[1]] as const,
    offset: -(muzzle[0] * axis[0] + muzzle[1] * axis[1]),
    level: random.uniform(25, 60),
  };
  const distance = about(random, STATED.cameraDistance);
  const focal = distance / metresPerPixel;
  const middleOfPicture: Vector = [(width - 1) / 2, (height - 1) / 2];
  const start = random.uniform(0, 1) / rate;
  const sightings = [];
  const seen: Vector[] = [];
  for (let i = 0; ; i++) {
    const middle = start + i / rate;
    const [before = 0, at = 0, after = 0] = fly(
      flight,
      NODES.map((node) => middle + (node * exposure) / 2),
    );
    const s = (SHARES[0] * before + SHARES[1] * at + SHARES[2] * after) / metresPerPixel;
    const sweep = (after - before) / (NODES[2] - NODES[0]) / metresPerPixel / 0.5;
    const x = muzzle[0] + s * axis[0];
    if (Math.abs(x - (width - 1) / 2) > (width - 1) / 2 - radius - 3) break;
    const place: Vector = [x, muzzle[1] + s * axis[1]];
    seen.push(place);
    sightings.push(
      inFullView({
        ...look,
        ...inPerspective(place, middleOfPicture, ball.diameter / 2, distance, focal),
        sweep: [axis[0] * sweep, axis[1] * sweep],
      }),
    );
  }
  const frames = renderFilm(
    {
      ...{ width, height, softness: random.uniform(...SOFTNESS), camera, sightings },
      backdrop: { ...backdrop, flange },
      ...{ before: STILL_FRAMES, after: STILL_FRAMES, cells: CELLS },
    },
    random,
  );
  const length = about(random, STATED.length);
  const point = [muzzle[0] + random.normal(0, STATED.muzzleU), muzzle[1]];
  const inputs = depths.map((depthOffsetU) => {
    const depth = random.normal(0, depthOffsetU);
    const pixels = ((length / metresPerPixel) * distance) / (distance + depth);
    const left = (width - 1 - pixels) / 2;
    const end = (x: number) => [x + random.normal(0, STATED.endpointU), height - 6];
    return inputsOf({
      mass: MASSES[build],
      ...{ frames, width, height, point, depthOffsetU },
      ends: [end(left), end(left + pixels)],
    });
  });
  const still = Array.from({ length: STILL_FRAMES }, () => null);
  const exitTime = STILL_FRAMES / rate - start;
  return { frames, inputs, velocity, exitTime, centres: [...still, ...seen, ...still] };
}

/**
 * Outline of a sphere whose centre is shown at `at`, in a plane squarely across at `distance`: the cone of rays that
 * touch it, cut by the image plane (the ellipse's slant, below 0.01 px here, left out). Lengths in m, `focal` in px.
 */
function inPerspective(
  at: Vector,
  principal: Vector,
  radius: number,
  distance: number,
  focal: number,
): { x: number; y: number; drawnOut: Vector } {
  const nearer = 1 - (radius / distance) ** 2;
  const [px, py] = [at[0] - principal[0], at[1] - principal[1]];
  const half = (offset: number) => Math.sqrt((1 + (offset / focal) ** 2 / nearer) / nearer);
  return {
    x: principal[0] + px / nearer,
    y: principal[1] + py / nearer,
    drawnOut: [half(px), half(py)],
  };
}

/** Moist air as a mixture of ideal gases; saturation by Magnus's formula. kg/m^3. */
function densityOf(random: Random): number {
  const [temperature, pressure, humidity] = [
    about(random, STATED.temperature),
    about(random, STATED.pressure),
    about(random, STATED.humidity),
  ];
  const celsius = temperature - 273.15;
  const vapour = humidity * 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  return (pressure - 0.378 * vapour) / (287.05 * temperature);
}

interface Written {
  readonly mass: Stated;
  readonly frames: readonly RenderedFrame[];
  readonly width: number;
  readonly height: number;
  readonly point: readonly number[];
  readonly ends: readonly (readonly number[])[];
  readonly depthOffsetU: number;
}

function inputsOf({
  mass,
  frames,
  width,
  height,
  point,
  ends,
  depthOffsetU,
}: Written): ReductionInputs {
  const { rate, exposure, length, endpointU, cameraDistance, muzzleU, diameter } = STATED;
  const { temperature, pressure, humidity } = STATED;
  const shot = validateShot({
    format: 'exitframe-shot',
    version: 3,
    name: 'rendered',
    footage: { path: 'clip.avi', sha256: null },
    timing: { source: 'recordingRate', recordingRate: rate, exposure },
    scale: {
      lengths: [
        { from: ends[0], to: ends[1], length: length.value, u: length.u, endpointU, depthOffsetU },
      ],
      cameraDistance,
    },
    ball: { diameter, mass },
    muzzle: { point, u: muzzleU, axis: null },
    seals: null,
    air: { temperature, pressure, humidity },
  });
  if (!shot.ok) throw new Error(shot.reason.message);
  return {
    shot: shot.value,
    info: {
      ...{ name: 'clip.avi', container: 'avi', codec: 'rawvideo', width, height },
      ...{ frameCount: frames.length, playbackRate: 30, rotation: 0, bitDepth: 8, pixelAspect: 1 },
      ...{ interlaced: { stated: null, separated: null }, levels: { black: 0, white: 255 } },
      ...{
        hasAudio: false,
        decoder: { name: 'none', why: { code: 'none', message: 'rendered in memory' } },
      },
    },
    timestamps: null,
    footageSha256: null,
    audio: null,
  };
}
