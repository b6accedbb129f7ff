import type { ClipSpec } from './scenario';

/**
 * Scenes of the page of usual mistakes: one shot of Launcher B, filmed as it should be and with one thing wrong. They
 * are never coded: their frames go to the measuring core as they leave the sensor.
 */
const base: ClipSpec = {
  folder: 'base',
  name: '2031-04-22 A',
  notes: 'Rendered, not filmed: an invented shot of the Brinewick Teaching Laboratory.',
  seed: 31,
  series: null,
  coding: { kind: 'avi', quality: 1 },
  image: { width: 640, height: 192, rotation: 0 },
  frames: 64,
  rate: { value: 12_000, u: 0.6 },
  unevenFrames: 0,
  exposure: { value: 10e-6, u: 5e-7 },
  readout: { direction: 'down', lineTime: { value: 0, u: 0 } },
  camera: {
    metresPerPixel: 0.0005,
    distance: { value: 1.2, u: 0.01 },
    blur: 0.7,
    fullWell: 14_000,
    readNoise: 28,
  },
  launcher: {
    muzzle: [120, 72],
    axisAngle: 0.006,
    axisStated: false,
    clearTube: false,
    ringDiameter: 0.05,
  },
  shot: { velocity: 170, dragCoefficient: 0.48, muzzleZone: null },
  exitFrame: 40,
  seal: {
    lead: 0.00036,
    bulge: 0.0011,
    opening: 0.00015,
    height: 0.009,
    fragments: 12,
    speed: 170,
  },
  // Its left mark stands right below the muzzle plane.
  bar: { centre: [321.6, 160], depthOffsetU: 0.001 },
  sound: null,
};

const phone: ClipSpec = {
  ...base,
  folder: 'phone',
  image: { width: 480, height: 160, rotation: 0 },
  frames: 45,
  rate: { value: 240, u: 0.05 },
  exposure: { value: 0.0004, u: 2e-5 },
  camera: {
    metresPerPixel: 0.0016,
    distance: { value: 1.05, u: 0.02 },
    blur: 0.8,
    fullWell: 6000,
    readNoise: 12,
  },
  launcher: { ...base.launcher, muzzle: [70, 62], axisStated: true },
  shot: { velocity: 11.4, dragCoefficient: 0.45, muzzleZone: null },
  exitFrame: 21,
  seal: { ...base.seal, lead: 0.0065, bulge: 0.028, opening: 0.0026, speed: 11.4 },
  bar: { centre: [260, 128], depthOffsetU: 0.001 },
};

export const MISTAKE_SCENES = {
  base,
  barBehind: { ...base, folder: 'bar-behind', bar: { ...base.bar, depth: 0.06 } },
  longExposure: { ...base, folder: 'long-exposure', exposure: { value: 80e-6, u: 5e-7 } },
  tilted: {
    ...base,
    folder: 'tilted',
    launcher: { ...base.launcher, muzzle: [120, 50], axisAngle: 0.14 },
    bar: { ...base.bar, centre: [320, 176] },
  },
  phone,
  rollingPhone: {
    ...phone,
    folder: 'rolling-phone',
    readout: { direction: 'left', lineTime: { value: 8e-6, u: 5e-8 } },
  },
} as const satisfies Readonly<Record<string, ClipSpec>>;
