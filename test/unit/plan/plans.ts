import type { Plan } from '../../../src/shot/planning';

/** A shot of Launcher B as it might be planned. */
export const PLAN: Plan = {
  name: '2031-05-02 A',
  speed: { value: 160, u: 5 },
  ball: { diameter: { value: 0.03, u: 5e-5 }, mass: { value: 0.0019, u: 1e-5 } },
  air: {
    temperature: { value: 293.15, u: 1 },
    pressure: { value: 101_325, u: 300 },
    humidity: { value: 0.5, u: 0.1 },
  },
  camera: {
    ...{ width: 1000, height: 256, rate: { value: 12_000, u: 0.6 } },
    exposure: { value: 10e-6, u: 5e-7 },
    readout: { direction: 'down', lineTime: { value: 0, u: 0 } },
  },
  view: { across: 0.4, beforeMuzzle: 0.06 },
  scale: {
    ...{ length: { value: 0.2, u: 5e-5 }, endpointU: 0.3 },
    ...{ depthOffset: { value: 0, u: 0.002 }, cameraDistance: { value: 1.2, u: 0.02 } },
  },
  muzzleU: 0.5,
  picture: {
    ...{ softness: 0.7, coded: false },
    light: { kind: 'contrast', contrastToNoise: 20, exposure: 10e-6, factor: 1 },
  },
  coverage: 0.95,
};

type Part<T> = { [K in keyof T]?: T[K] };

/** The plan with some of its parts changed. */
export const planWith = (
  changes: {
    readonly [K in keyof Plan]?: Plan[K] extends object ? Part<Plan[K]> : Plan[K];
  },
): Plan =>
  Object.fromEntries(
    Object.entries(PLAN).map(([key, value]) => {
      const change = changes[key as keyof Plan];
      return [
        key,
        typeof value === 'object' ? { ...value, ...(change as object) } : (change ?? value),
      ];
    }),
  ) as unknown as Plan;
