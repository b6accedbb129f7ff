import type { CameraTrade, Plan } from '../shot/planning';

/** What a plan begins with: a shot of the demonstration launcher, with no name yet. */
export const FIRST_PLAN: Plan = {
  name: '',
  speed: { value: 160, u: 10 },
  ball: { diameter: { value: 0.03, u: 5e-5 }, mass: { value: 0.0019, u: 1e-5 } },
  air: {
    temperature: { value: 293.15, u: 2 },
    pressure: { value: 101_325, u: 1500 },
    humidity: { value: 0.5, u: 0.2 },
  },
  camera: {
    ...{ width: 1024, height: 256, rate: { value: 12_000, u: 0.6 } },
    exposure: { value: 20e-6, u: 1e-6 },
    readout: { direction: 'down', lineTime: { value: 0, u: 0 } },
  },
  view: { across: 0.4, beforeMuzzle: 0.06 },
  scale: {
    ...{ length: { value: 0.2, u: 5e-5 }, endpointU: 0.3 },
    ...{ depthOffset: { value: 0, u: 0.002 }, cameraDistance: { value: 1.2, u: 0.02 } },
  },
  muzzleU: 0.5,
  picture: {
    ...{ softness: 0.7, coded: true },
    light: { kind: 'contrast', contrastToNoise: 20, exposure: 20e-6, factor: 1 },
  },
  coverage: 0.95,
};

/** A camera that takes the first plan's picture at its rate. */
export const FIRST_TRADE: CameraTrade = {
  ...{ kind: 'pixelRate', pixelsPerSecond: 3.2e9, mostWidth: 1280, mostHeight: 800 },
};
