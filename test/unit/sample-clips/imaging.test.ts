import { describe, expect, it } from 'vitest';
import { sphereOutline } from '../../../sample-clips/render/ball';
import { Canvas, type StaticScene, SUB } from '../../../sample-clips/render/canvas';
import { Film } from '../../../sample-clips/render/exposure';
import { Optics } from '../../../sample-clips/render/optics';
import { randomStream } from '../../../sample-clips/render/random';
import { light } from '../../../sample-clips/render/scene';
import { FULL, PEDESTAL, read, TWELVE_IN_SIXTEEN } from '../../../sample-clips/render/sensor';
import { lineAt } from '../../../sample-clips/render/shutter';
import { ballInImage, type Stage, setStage } from '../../../sample-clips/render/stage';
import { tinyClip } from './tinyClip';

const WIDTH = 72;
const HEIGHT = 60;

function emptyScene(width = WIDTH, height = HEIGHT): StaticScene {
  const samples = width * height * SUB * SUB;
  return {
    width,
    height,
    radiance: new Float32Array(samples).fill(0.1),
    through: new Float32Array(samples).fill(1),
    added: new Float32Array(samples),
  };
}

/** Sum and centroid of an image. */
function moments(image: Float32Array, width: number): { sum: number; x: number; y: number } {
  let sum = 0;
  let x = 0;
  let y = 0;
  image.forEach((value, k) => {
    sum += value;
    x += value * (k % width);
    y += value * Math.floor(k / width);
  });
  return { sum, x: x / sum, y: y / sum };
}

function pixels(canvas: Canvas, blur = 0.7): Float32Array {
  const out = new Float32Array(WIDTH * HEIGHT);
  new Optics(WIDTH, HEIGHT, blur).image(canvas.change, canvas.first, canvas.last, out);
  return out;
}

const ALL = { x0: 0, x1: WIDTH, y0: 0, y1: HEIGHT };
/** A camera so far off that a sphere is seen as a disc: 1 px is 1 mm. */
const FAR = { focal: 1e6, distance: 1000, centre: [35.5, 29.5] } as const;

describe('a rendered disc', () => {
  it.each([
    [35.5, 29.5, 15],
    [31.237, 28.871, 17.3],
    [40.02, 30.66, 9.55],
  ])('at %f, %f has its centroid there and its exact area', (x, y, radius) => {
    const canvas = new Canvas(emptyScene());
    const centre = [(x - 35.5) / 1000, (y - 29.5) / 1000, 0] as const;
    canvas.disc(sphereOutline(FAR, centre, radius / 1000), () => 1.1, ALL);
    canvas.endInstant(1);
    const found = moments(pixels(canvas), WIDTH);
    expect(Math.abs(found.x - x)).toBeLessThan(1e-3);
    expect(Math.abs(found.y - y)).toBeLessThan(1e-3);
    // The area of a circle; the disc is 1 brighter than what is behind it.
    expect(found.sum / (Math.PI * radius * radius)).toBeCloseTo(1, 3);
  });

  it('adds up over instants and is gone after clearing', () => {
    const canvas = new Canvas(emptyScene());
    const outline = sphereOutline(FAR, [0, 0, 0], 0.012);
    for (let k = 0; k < 4; k++) {
      canvas.disc(outline, () => 1.1, ALL);
      // Painted over once more inside: the same place must not count twice.
      canvas.polygon([32, 26, 39, 26, 39, 33, 32, 33], 1.1, 1, false, ALL);
      canvas.endInstant(0.25);
    }
    expect(moments(pixels(canvas), WIDTH).sum).toBeCloseTo(Math.PI * 144, 0);
    canvas.clear();
    expect(pixels(canvas).every((value) => value === 0)).toBe(true);
  });

  it('is hidden behind what lets no light through', () => {
    const scene = emptyScene();
    scene.through.fill(0);
    scene.added.fill(0.1);
    const canvas = new Canvas(scene);
    canvas.disc(sphereOutline(FAR, [0, 0, 0], 0.012), () => 1, ALL);
    canvas.endInstant(1);
    expect(Math.abs(moments(pixels(canvas), WIDTH).sum)).toBeLessThan(1e-4);
  });
});

it('draws a polygon with its exact area and centroid', () => {
  const canvas = new Canvas(emptyScene());
  // A right triangle: area 1/2 base x height, centroid at a third of each leg.
  canvas.polygon([20, 15, 50, 15, 20, 35], 1.1, 0.5, false, ALL);
  canvas.endInstant(1);
  const found = moments(pixels(canvas), WIDTH);
  expect(found.sum / (0.5 * 300)).toBeCloseTo(1, 2);
  expect(found.x).toBeCloseTo(30, 1);
  expect(found.y).toBeCloseTo(15 + 20 / 3, 1);
});

it('blurs a bright edge into the normal distribution function averaged over pixels', () => {
  const canvas = new Canvas(emptyScene());
  canvas.polygon([-10, -10, 35.5, -10, 35.5, 80, -10, 80], 1.1, 1, false, ALL);
  canvas.endInstant(1);
  const blur = 0.8;
  const image = pixels(canvas, blur);
  const row = 30 * WIDTH;
  // Mean of 1 - Phi((x - 35.5) / blur) over the pixel 36, by a fine sum of the Gaussian's series.
  let mean = 0;
  for (let k = 0; k < 400; k++) {
    const distance = 35.5 + (k + 0.5) / 400 - 35.5;
    mean += (0.5 - gaussianIntegral(distance / blur)) / 400;
  }
  expect(image[row + 36]).toBeCloseTo(mean, 3);
  expect((image[row + 35] as number) + (image[row + 36] as number)).toBeCloseTo(1, 4);
});

/** Integral of the standard normal density from 0 to z: its power series. */
function gaussianIntegral(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 1; n < 60; n++) {
    term *= (-z * z) / (2 * n);
    sum += term / (2 * n + 1);
  }
  return sum / Math.sqrt(2 * Math.PI);
}

describe('a sphere seen aslant', () => {
  it('fills the angle it should, off the camera axis too', () => {
    const projection = { focal: 3000, distance: 1.5, centre: [500, 100] } as const;
    const outline = sphereOutline(projection, [0.12, 0, 0], 0.015);
    const ends = outline.row(100);
    const middle = Math.atan2(0.12, 1.5);
    const half = Math.asin(0.015 / Math.hypot(0.12, 1.5));
    expect(ends?.[0]).toBeCloseTo(500 + 3000 * Math.tan(middle - half), 6);
    expect(ends?.[1]).toBeCloseTo(500 + 3000 * Math.tan(middle + half), 6);
    expect(outline.row(outline.top - 0.01)).toBeNull();
    expect(outline.row(outline.bottom - 0.001)).not.toBeNull();
  });
});

/** A stage with an even background, no seal and a ball flying level at constant speed. */
function bareStage(exposure: number, lineTime: number, direction: 'left' | 'right'): Stage {
  const spec = { ...tinyClip, readout: { ...tinyClip.readout, direction } };
  const stage = setStage(spec);
  const { width, height } = spec.image;
  return {
    ...stage,
    spec,
    truth: { ...stage.truth, exposure, lineTime },
    muzzle: { origin: [-0.02, 0], axis: [1, 0] },
    projection: { focal: 1000 / 0.0017, distance: 1000, centre: [47.5, 23.5] },
    still: emptyScene(width, height),
    seal: { sheets: () => ({ behind: [], before: [] }), fastest: () => 0, pieces: [] },
    flight: { position: (t) => [0.02 + 100 * t, 0], velocity: () => [100, 0] },
    times: Float64Array.of(0),
  };
}

/** Place of the ball's light, its brightness being about the same everywhere. */
function filmed(stage: Stage): number {
  const bright = new Film(stage).frame(0).map((value) => value - 0.1);
  return moments(bright, stage.spec.image.width).x;
}

describe('an exposure', () => {
  it('puts the centroid of a blurred ball at its place in mid-exposure', () => {
    const stage = bareStage(120e-6, 0, 'right');
    const offset = filmed(bareStage(1e-9, 0, 'right')) - ballInImage(stage, 0)[0];
    // 12 mm, 7 px of blur. The light is uneven, so each instant counts by its brightness.
    let sum = 0;
    let moment = 0;
    for (let k = 0; k < 200; k++) {
      const [x, y] = ballInImage(stage, ((k + 0.5) / 200 - 0.5) * 120e-6);
      const brightness = light(96, 48, x, y);
      sum += brightness;
      moment += brightness * x;
    }
    expect(Math.abs(moment / sum - ballInImage(stage, 0)[0])).toBeLessThan(0.05);
    expect(Math.abs(filmed(stage) - (moment / sum + offset))).toBeLessThan(2e-3);
  });

  it.each(['left', 'right'] as const)('exposes each line at its own time, reading %s', (side) => {
    const still = filmed(bareStage(1e-6, 0, side));
    const stage = bareStage(1e-6, 1e-6, side);
    const [x0] = ballInImage(stage, 0);
    // x(t) = x0 + w t with t = lineTime * line(x): solved by hand for each direction.
    const perLine = (100 / 0.0017) * 1e-6;
    const expected = side === 'right' ? x0 / (1 - perLine) : (x0 + perLine * 95) / (1 + perLine);
    expect(lineAt(side, 96, 48, expected, 0)).toBeCloseTo((expected - x0) / perLine, 6);
    // The light's offset from the centre grows or shrinks with the ball's width on the image.
    const widening = side === 'right' ? 1 / (1 - perLine) : 1 / (1 + perLine);
    expect(filmed(stage)).toBeCloseTo(expected + (still - x0) * widening, 1);
  });
});

describe('the sensor', () => {
  const random = (): ReturnType<typeof randomStream> => randomStream(5, 'noise');

  it.each([
    ['8-bit', FULL, new Uint8Array(40_000)],
    ['12 in 16 bits', TWELVE_IN_SIXTEEN, new Uint16Array(40_000)],
  ] as const)('has the mean and variance of the photon-transfer line, %s', (_, codes, out) => {
    const sensor = { ...codes, fullWell: 2000, readNoise: 12 };
    const perElectron = (codes.white - codes.black) / sensor.fullWell;
    for (const level of [0.05, 0.3, 0.8]) {
      read(sensor, new Float32Array(out.length).fill(level), random(), out);
      let mean = 0;
      for (const value of out) mean += value / out.length;
      let variance = 0;
      for (const value of out) variance += (value - mean) ** 2 / (out.length - 1);
      const electrons = level * sensor.fullWell;
      // Shot noise, read noise, and rounding to codes: step^2 / 12.
      const expected = perElectron ** 2 * (electrons + 144) + codes.step ** 2 / 12;
      expect(mean / (perElectron * (electrons + PEDESTAL * 2000))).toBeCloseTo(1, 2);
      // The variance of 40 000 values is known to 0.7 %; four of that.
      expect(Math.abs(variance / expected - 1)).toBeLessThan(0.03);
    }
  });

  it('keeps the low four bits of 16 empty', () => {
    const sensor = { ...TWELVE_IN_SIXTEEN, fullWell: 2000, readNoise: 12 };
    const out = read(sensor, new Float32Array(100).fill(2), random(), new Uint16Array(100));
    expect(out.every((value) => value === 65_520)).toBe(true);
    read(sensor, new Float32Array(100).fill(0.2), random(), out);
    expect(out.every((value) => value % 16 === 0)).toBe(true);
  });
});

it('renders the same frame from the same seed, another from another', () => {
  const once = (seed: number): Uint8Array => {
    const stage = setStage({ ...tinyClip, seed });
    const light = new Film(stage).frame(9);
    const sensor = { ...FULL, fullWell: 12_000, readNoise: 30 };
    return read(sensor, light, randomStream(seed, 'noise'), new Uint8Array(light.length));
  };
  expect(once(11)).toEqual(once(11));
  expect(once(12)).not.toEqual(once(11));
});

it('films frames in any order alike', () => {
  const stage = setStage(tinyClip);
  const straight = Float32Array.from(new Film(stage).frame(8));
  const film = new Film(stage);
  film.frame(12);
  expect(film.frame(8)).toEqual(straight);
});
