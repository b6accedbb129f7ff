import type { Camera } from './render/camera';
import type { FilmPlan } from './render/film';
import type { Random } from './render/random';
import type { Backdrop, Ball, Fragment, Light, Vector } from './render/scene';
import { brightness, meanBrightness } from './render/surface';

export interface LookKind {
  readonly radius: number;
  /** Mean contrast of the ball over the noise at the level between ball and background. */
  readonly contrastToNoise: number;
  readonly surface: 'even' | 'matt';
}

/** A kind of shot; everything else of it is drawn. */
export interface ShotKind extends LookKind {
  /** Way of the ball from frame to frame, radii. */
  readonly step: number;
  /** Way of the ball during the exposure, radii. */
  readonly sweep: number;
  readonly sightings: number;
}

/** Frames a film has, as many as the background is made from. */
export const FRAMES = 48;
/** Background left around the ball's path, px. */
const MARGIN = 14;
/** Range of the optics' blur, px: in focus, and a little off. */
export const SOFTNESS = [0.5, 0.9] as const;

/** The ball in one frame, and what hides it. */
export interface Sighting {
  readonly ball: Ball;
  readonly fragment: Fragment | null;
  readonly hiddenBy: 'nothing' | 'flange' | 'fragment' | 'frame edge';
  /** Direction from the ball's middle to what hides it, radians from x towards y; null: nothing. */
  readonly hiddenTowards: number | null;
}

export interface Shot extends FilmPlan {
  readonly sightings: readonly Sighting[];
  /** Unit vector of the flight. */
  readonly axis: Vector;
  /** Ball minus background, mean over the disc, grey values. */
  readonly contrast: number;
}

/** A shot across a scene without anything before the ball: light, place, focus, noise and scene are drawn. */
export function drawShot(kind: ShotKind, random: Random): Shot {
  const { radius, sightings } = kind;
  const angle = random.uniform(-0.15, 0.15);
  const forwards = random.uniform(0, 1) < 0.5 ? -1 : 1;
  const axis: Vector = [forwards * Math.cos(angle), forwards * Math.sin(angle)];
  const step = kind.step * radius * random.uniform(0.95, 1.05);
  const sweep = kind.sweep * radius * random.uniform(0.95, 1.05);
  const length = step * (sightings - 1);
  const reach = radius + sweep / 2 + MARGIN;
  const width = evenNumber(Math.abs(axis[0]) * length + 2 * reach);
  const height = evenNumber(Math.abs(axis[1]) * length + 2 * reach);
  const start: Vector = [
    width / 2 - (axis[0] * length) / 2 + random.uniform(-1, 1),
    height / 2 - (axis[1] * length) / 2 + random.uniform(-1, 1),
  ];
  const { ball, backdrop, camera, contrast } = drawLook(kind, random);
  const places = Array.from(
    { length: sightings },
    (_, i): Ball => ({
      ...ball,
      x: start[0] + axis[0] * step * i,
      y: start[1] + axis[1] * step * i,
      sweep: [axis[0] * sweep, axis[1] * sweep],
    }),
  );
  const rest = FRAMES - sightings;
  return {
    width,
    height,
    backdrop,
    softness: random.uniform(...SOFTNESS),
    camera,
    sightings: places.map(inFullView),
    before: rest >> 1,
    after: rest - (rest >> 1),
    axis,
    contrast,
  };
}

export const inFullView = (ball: Ball): Sighting => ({
  ball,
  fragment: null,
  hiddenBy: 'nothing',
  hiddenTowards: null,
});

export interface Look {
  readonly ball: Pick<Ball, 'radius' | 'brightness' | 'light'>;
  readonly backdrop: Backdrop;
  readonly camera: Camera;
  readonly contrast: number;
}

/** Up to a size a codec with halved colour takes. */
export const evenNumber = (size: number): number => 2 * Math.ceil(size / 2);

/** Grey levels are chosen so that noise hardly ever reaches black or white. */
export function drawLook({ radius, contrastToNoise, surface }: LookKind, random: Random): Look {
  const size = contrastToNoise < 10 ? random.uniform(50, 65) : random.uniform(60, 100);
  const dark = surface === 'even' && random.uniform(0, 1) < 0.5;
  const deviation = size / contrastToNoise;
  const low = random.uniform(20, 30) + 3 * deviation;
  const level = dark ? low + size : low;
  const mean = dark ? low : low + size;
  const light = surface === 'matt' ? drawLight(low + LEAST_AT_LIMB * size, mean, random) : null;
  const shot = random.uniform(0.2, 0.9) * (deviation ** 2 - 1 / 12);
  return {
    ball: { radius, brightness: light ? mean / meanBrightness(light) : mean, light },
    backdrop: drawBackdrop(level, radius, random),
    camera: {
      read: deviation ** 2 - 1 / 12 - shot,
      gain: shot / (low + size / 2),
    },
    contrast: dark ? -size : size,
  };
}

/** The limb of a matt ball stands out everywhere by this share of the mean contrast: what does not is no edge. */
const LEAST_AT_LIMB = 0.2;

/** Light under which a ball of this mean grey value has no darker limb than the least. */
function drawLight(least: number, mean: number, random: Random): Light {
  for (;;) {
    const light: Light = {
      ambient: random.uniform(0.3, 0.6),
      azimuth: random.uniform(-Math.PI, Math.PI),
      tilt: random.uniform(0.3, 1.1),
      limb: random.uniform(0, 0.25),
    };
    const away = brightness(light)(-Math.cos(light.azimuth), -Math.sin(light.azimuth));
    if ((mean * away) / meanBrightness(light) > least) return light;
  }
}

/** Even, a gentle slope, or a texture of waves. */
function drawBackdrop(level: number, radius: number, random: Random): Backdrop {
  const kind = random.pick(['even', 'slope', 'texture']);
  const slope = (0.04 * level) / radius;
  return {
    level,
    slope:
      kind === 'slope'
        ? [random.uniform(-slope, slope) / 5, random.uniform(-slope, slope)]
        : [0, 0],
    waves:
      kind === 'texture'
        ? Array.from({ length: 5 }, () => {
            const number = (2 * Math.PI) / random.uniform(8, 50);
            const towards = random.uniform(0, Math.PI);
            return {
              wave: [number * Math.cos(towards), number * Math.sin(towards)] as const,
              phase: random.uniform(0, 2 * Math.PI),
              amplitude: 0.02 * level,
            };
          })
        : [],
    flange: null,
  };
}
