import { inverse, Matrix } from 'ml-matrix';
import { type Camera, varianceAt } from './render/camera';
import { expectation } from './render/picture';
import type { Ball, Light, Scene, Window } from './render/scene';

/** Cells a pixel for the derivatives: a bound needs no more than a per cent. */
const CELLS = 3;

/** What is known of the ball beforehand: standard uncertainties. */
export interface Prior {
  readonly radiusU: number;
  /** Of the whole blur of an edge, optics and pixel together, px. */
  readonly softnessU: number;
  /** Of the length of the motion blur, as a share. */
  readonly sweepU: number;
}

/** Least covariance of the centre, px^2: image axes. */
export interface Bound {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  /** Least standard uncertainty of the radius, px. */
  readonly radius: number;
}

type Unknown =
  | 'x'
  | 'y'
  | 'radius'
  | 'softness'
  | 'contrast'
  | 'background'
  | 'sweep'
  | 'ambient'
  | 'lampAcross'
  | 'lampDown';

const LIGHT: readonly Unknown[] = ['ambient', 'lampAcross', 'lampDown'];

function unknownsOf(ball: Ball): readonly Unknown[] {
  return [
    'x',
    'y',
    'radius',
    'softness',
    'contrast',
    'background',
    ...(Math.hypot(...ball.sweep) > 0 ? (['sweep'] as const) : []),
    ...(ball.light ? LIGHT : []),
  ];
}

/**
 * Cramer-Rao bound of the ball's centre from the pixels of a window (Kay, Fundamentals of Statistical
 * Signal Processing: Estimation Theory, 1993, eq. 3.31: normal pixels whose variance follows their mean),
 * the variance that of shot and read noise and rounding, derivatives by differences. The priors add
 * their information. `frames` alike of one shot tell of a matt ball's light together, which is the
 * same in all of them: to each the others' information on it is added.
 */
export function centreBound(
  scene: Scene & { readonly ball: Ball },
  window: Window,
  camera: Camera,
  prior: Prior,
  frames: number,
): Bound {
  const unknowns = unknownsOf(scene.ball);
  const mean = expectation(scene, window, CELLS);
  const slopes = unknowns.map((unknown) => slopeBy(unknown, scene, window, mean));
  const n = unknowns.length;
  const information = Matrix.zeros(n, n);
  for (let a = 0; a < n; a++) {
    for (let b = a; b < n; b++) {
      const first = slopes[a] as Float64Array;
      const second = slopes[b] as Float64Array;
      let sum = 0;
      for (let p = 0; p < mean.length; p++) {
        const variance = varianceAt(camera, mean[p] as number);
        const weight = 1 / variance + camera.gain ** 2 / (2 * variance * variance);
        sum += weight * (first[p] as number) * (second[p] as number);
      }
      information.set(a, b, sum);
      information.set(b, a, sum);
    }
  }
  const known: Partial<Record<Unknown, number>> = {
    radius: prior.radiusU,
    softness: prior.softnessU,
    sweep: prior.sweepU,
  };
  unknowns.forEach((unknown, i) => {
    const u = known[unknown];
    if (u !== undefined) information.set(i, i, information.get(i, i) + 1 / (u * u));
  });
  const light = unknowns.length - LIGHT.length;
  if (scene.ball.light && frames > 1) {
    // What a frame tells of the light with all else unknown: the inverse of its covariance.
    const of = inverse(information).subMatrix(light, n - 1, light, n - 1);
    const told = inverse(of).mul(frames - 1);
    for (let a = light; a < n; a++) {
      for (let b = light; b < n; b++) {
        information.set(a, b, information.get(a, b) + told.get(a - light, b - light));
      }
    }
  }
  const covariance = inverse(information);
  return {
    xx: covariance.get(0, 0),
    xy: covariance.get(0, 1),
    yy: covariance.get(1, 1),
    radius: Math.sqrt(covariance.get(2, 2)),
  };
}

/** Change of each pixel by an unknown. */
function slopeBy(
  unknown: Unknown,
  scene: Scene & { readonly ball: Ball },
  window: Window,
  mean: Float64Array,
): Float64Array {
  const linear = unknown === 'contrast' || unknown === 'background';
  const step = linear ? 1 : 0.02;
  const up = expectation(moved(scene, unknown, step), window, CELLS);
  if (linear) return up.map((value, p) => value - (mean[p] as number));
  const down = expectation(moved(scene, unknown, -step), window, CELLS);
  return up.map((value, p) => (value - (down[p] as number)) / (2 * step));
}

function moved(scene: Scene & { readonly ball: Ball }, unknown: Unknown, by: number): Scene {
  const { ball, backdrop } = scene;
  switch (unknown) {
    case 'background':
      return { ...scene, backdrop: { ...backdrop, level: backdrop.level + by } };
    case 'softness': {
      // The blur by the pixel's own area, variance 1/12, comes on top of the optics'.
      const whole = Math.sqrt(scene.softness ** 2 + 1 / 12) + by;
      return { ...scene, softness: Math.sqrt(Math.max(0, whole * whole - 1 / 12)) };
    }
    case 'contrast':
      return { ...scene, ball: { ...ball, brightness: ball.brightness + by } };
    case 'sweep':
      return {
        ...scene,
        ball: { ...ball, sweep: [ball.sweep[0] * (1 + by), ball.sweep[1] * (1 + by)] },
      };
    case 'x':
    case 'y':
    case 'radius':
      return { ...scene, ball: { ...ball, [unknown]: ball[unknown] + by } };
    default:
      return { ...scene, ball: { ...ball, light: ball.light && turned(ball.light, unknown, by) } };
  }
}

function turned(light: Light, unknown: 'ambient' | 'lampAcross' | 'lampDown', by: number): Light {
  if (unknown === 'ambient') return { ...light, ambient: light.ambient + by };
  const x = Math.sin(light.tilt) * Math.cos(light.azimuth) + (unknown === 'lampAcross' ? by : 0);
  const y = Math.sin(light.tilt) * Math.sin(light.azimuth) + (unknown === 'lampDown' ? by : 0);
  const off = Math.min(1, Math.hypot(x, y));
  return { ...light, azimuth: Math.atan2(y, x), tilt: Math.asin(off) };
}
