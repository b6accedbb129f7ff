import type { ClipSpec } from '../../../sample-clips/render/scenario';

/** A shot small enough to render in a test. */
export const tinyClip: ClipSpec = {
  folder: 'tiny',
  name: 'tiny',
  notes: '',
  seed: 11,
  series: null,
  coding: { kind: 'mp4', crf: 20 },
  image: { width: 96, height: 48, rotation: 0 },
  frames: 20,
  rate: { value: 10_000, u: 0.5 },
  unevenFrames: 0,
  exposure: { value: 40e-6, u: 1e-6 },
  readout: { direction: 'down', lineTime: { value: 0, u: 0 } },
  camera: {
    metresPerPixel: 0.0017,
    distance: { value: 1.5, u: 0.02 },
    blur: 0.7,
    fullWell: 12_000,
    readNoise: 30,
  },
  launcher: {
    muzzle: [20, 20],
    axisAngle: 0.02,
    axisStated: false,
    clearTube: false,
    ringDiameter: 0.05,
  },
  shot: { velocity: 120, dragCoefficient: 0.47, muzzleZone: null },
  exitFrame: 6,
  seal: {
    lead: 0.0003,
    bulge: 0.0003,
    opening: 0.0001,
    height: 0.008,
    fragments: 6,
    speed: 120,
  },
  bar: { centre: [55, 40], depthOffsetU: 0.001 },
  sound: null,
};
