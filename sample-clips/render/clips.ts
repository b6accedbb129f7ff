import type { ClipSpec } from './scenario';

const GLOBAL = { direction: 'down', lineTime: { value: 0, u: 0 } } as const;
const RENDERED = 'Rendered, not filmed: an invented shot of the Brinewick Teaching Laboratory.';
/** Drag coefficients of a smooth sphere by speed: about those of the published correlations for its
 * Reynolds and Mach numbers (Clift, Grace & Weber 1978; Loth 2008; from memory). */
const CD = { slow: 0.45, middle: 0.47, fast: 0.49 } as const;

export const clips: readonly ClipSpec[] = [
  {
    folder: 'a-clean',
    name: '2031-04-17 A',
    notes: `${RENDERED} Launcher B with an opaque barrel end; the ball comes from behind the clamp ring.`,
    seed: 1,
    coding: { kind: 'mp4', crf: 11 },
    image: { width: 1024, height: 256, rotation: 0 },
    frames: 140,
    rate: { value: 12_000, u: 0.6 },
    unevenFrames: 0,
    exposure: { value: 20e-6, u: 1e-6 },
    readout: GLOBAL,
    camera: {
      metresPerPixel: 0.00033,
      distance: { value: 1.5, u: 0.02 },
      blur: 0.7,
      fullWell: 16_000,
      readNoise: 30,
    },
    launcher: {
      muzzle: [200, 108],
      axisAngle: 0.0095,
      axisStated: false,
      clearTube: false,
      ringDiameter: 0.05,
    },
    shot: { velocity: 180, dragCoefficient: CD.fast, muzzleZone: null },
    exitFrame: 66,
    seal: {
      lead: 0.00034,
      bulge: 0.0011,
      opening: 0.00014,
      height: 0.009,
      fragments: 16,
      speed: 180,
    },
    bar: { centre: [560, 222], depthOffsetU: 0.001 },
    sound: null,
  },
];
