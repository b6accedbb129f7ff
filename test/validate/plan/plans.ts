import type { Light, Plan } from '../../../src/shot/planning';

/** A plan that clips are made from, and what the renderer adds of its own. */
export interface ClipPlan {
  readonly plan: Plan;
  /** What the plan is meant to show. */
  readonly about: string;
  readonly fitDominated: boolean;
  readonly surface: 'even' | 'matt';
}

const HOLLOW = { value: 0.0019, u: 1e-5 };
const SOLID = { value: 0.0165, u: 1e-5 };
const HEAVY = { value: 0.21, u: 2e-4 };
const DIAMETER = { value: 0.03, u: 5e-5 };
const GLOBAL = { direction: 'down', lineTime: { value: 0, u: 0 } } as const;

const lit = (contrastToNoise: number, exposure: number): Light => ({
  ...{ kind: 'contrast', contrastToNoise, exposure, factor: 1 },
});

/** What the five have in common unless they say otherwise. */
const COMMON = {
  ball: { diameter: DIAMETER, mass: HOLLOW },
  air: {
    temperature: { value: 293.15, u: 1 },
    pressure: { value: 101_325, u: 300 },
    humidity: { value: 0.5, u: 0.1 },
  },
  muzzleU: 0.3,
  coverage: 0.95,
} as const;

const scale = (endpointU: number, depthU: number, lengthU = 5e-5): Plan['scale'] => ({
  ...{ length: { value: 0.2, u: lengthU }, endpointU },
  ...{ depthOffset: { value: 0, u: depthU }, cameraDistance: { value: 1.2, u: 0.02 } },
});

/** In the order of the chunks. */
export const PLANS: readonly ClipPlan[] = [
  {
    about: 'hollow ball, scale laid roughly',
    ...{ fitDominated: false, surface: 'even' },
    plan: {
      ...{ ...COMMON, name: 'rough scale', speed: { value: 165, u: 5 } },
      camera: {
        ...{ width: 320, height: 96, readout: GLOBAL },
        ...{ rate: { value: 12_000, u: 0.6 }, exposure: { value: 12e-6, u: 3e-7 } },
      },
      view: { across: 0.42, beforeMuzzle: 0.035 },
      scale: scale(0.5, 0.002),
      picture: { softness: 0.7, coded: false, light: lit(25, 12e-6) },
    },
  },
  {
    about: 'solid ball, sensor told by its electrons',
    ...{ fitDominated: false, surface: 'matt' },
    plan: {
      ...{ ...COMMON, name: 'solid ball', speed: { value: 95, u: 3 } },
      ball: { diameter: DIAMETER, mass: SOLID },
      camera: {
        ...{ width: 288, height: 96, readout: GLOBAL },
        ...{ rate: { value: 8000, u: 0.4 }, exposure: { value: 25e-6, u: 6e-7 } },
      },
      view: { across: 0.4, beforeMuzzle: 0.035 },
      scale: scale(0.1, 0.001),
      picture: {
        ...{ softness: 0.8, coded: false },
        light: {
          ...{ kind: 'sensor', exposure: 50e-6, factor: 1, fullWell: 1500, readNoise: 12 },
          ...{ ball: 0.8, background: 0.2, bitDepth: 8 },
        },
      },
    },
  },
  {
    about: 'hollow ball, dim, scale set closely',
    ...{ fitDominated: false, surface: 'even' },
    plan: {
      ...{ ...COMMON, name: 'dim', speed: { value: 140, u: 5 } },
      camera: {
        ...{ width: 320, height: 96, readout: GLOBAL },
        ...{ rate: { value: 10_000, u: 0.5 }, exposure: { value: 12e-6, u: 3e-7 } },
      },
      view: { across: 0.45, beforeMuzzle: 0.04 },
      scale: scale(0.05, 2e-4),
      picture: { softness: 0.6, coded: false, light: lit(14, 12e-6) },
    },
  },
  {
    about: 'heavy ball, faint, scale set closely',
    ...{ fitDominated: true, surface: 'even' },
    plan: {
      ...{ ...COMMON, name: 'faint', speed: { value: 60, u: 2 } },
      ball: { diameter: DIAMETER, mass: HEAVY },
      camera: {
        ...{ width: 256, height: 80, readout: GLOBAL },
        ...{ rate: { value: 2000, u: 0.05 }, exposure: { value: 3e-5, u: 8e-7 } },
      },
      view: { across: 0.42, beforeMuzzle: 0.035 },
      scale: scale(0.008, 5e-5, 5e-6),
      picture: { softness: 0.7, coded: false, light: lit(5, 3e-5) },
    },
  },
  {
    about: 'heavy ball, slow, long blur, film kept with loss, scale set closely',
    ...{ fitDominated: true, surface: 'even' },
    plan: {
      ...{ ...COMMON, name: 'coded', speed: { value: 45, u: 2 } },
      ball: { diameter: DIAMETER, mass: HEAVY },
      camera: {
        ...{ width: 320, height: 96, readout: GLOBAL },
        ...{ rate: { value: 2000, u: 0.05 }, exposure: { value: 1.2e-4, u: 3e-6 } },
      },
      view: { across: 0.4, beforeMuzzle: 0.035 },
      scale: scale(0.008, 5e-5, 5e-6),
      picture: { softness: 0.7, coded: true, light: lit(30, 1.2e-4) },
    },
  },
];
