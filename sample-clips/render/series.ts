import type { ClipSpec, StatedLauncher } from './scenario';

export const SERIES_FOLDER = 'series';

/** Tubes of Launcher B, m, each shot with three times. */
const LENGTHS = [0.5, 0.8, 1.1, 1.4] as const;
const SHOTS_A_LENGTH = 3;
/** The shots whose clips are kept: one of the shortest tube, one of the longest. */
export const KEPT_CLIPS: readonly string[] = ['2031-05-06 A', '2031-05-06 L'];

/**
 * What the laboratory states. The seal lies on the muzzle's face: the atmosphere holds it in, and a light clamp alone
 * holds it out. Discharge, loss and friction are common values, not measured: a series may tell the first of them.
 */
const launcher = (length: number): StatedLauncher => ({
  boreDiameter: { value: 0.031, u: 5e-5 },
  barrelLength: { value: length, u: 0.0005 },
  residualPressure: { value: 1000, u: 150 },
  sealBurstPressure: { value: 5000, u: 1000 },
  startPosition: { value: 0.016, u: 0.0005 },
  gapDischarge: { value: 0.7, u: 0.15 },
  entranceLoss: { value: 0.5, u: 0.2 },
  wallFriction: { value: 0.02, u: 0.005 },
});

/** Seeds were chosen once and never for the look of the result. */
const SETUP_SEED = 100;

/** Twelve shots of one morning at four barrel lengths, three each. */
export const series: readonly ClipSpec[] = LENGTHS.flatMap((length, i) =>
  Array.from({ length: SHOTS_A_LENGTH }, (_, k): ClipSpec => {
    const number = SHOTS_A_LENGTH * i + k;
    return {
      folder: SERIES_FOLDER,
      name: `2031-05-06 ${String.fromCharCode(65 + number)}`,
      notes: `Rendered, not filmed: an invented shot of the Brinewick Teaching Laboratory. Launcher B with a tube of ${length.toFixed(2)} m.`,
      seed: SETUP_SEED + 1 + number,
      series: {
        seed: SETUP_SEED,
        launcher: launcher(length),
        scatter: { residualPressure: 20, sealBurstPressure: 300 },
      },
      coding: { kind: 'mp4', crf: 13 },
      image: { width: 640, height: 160, rotation: 0 },
      frames: 76,
      rate: { value: 12_000, u: 0.6 },
      unevenFrames: 0,
      exposure: { value: 20e-6, u: 1e-6 },
      readout: { direction: 'down', lineTime: { value: 0, u: 0 } },
      camera: {
        metresPerPixel: 0.0006,
        distance: { value: 1.5, u: 0.02 },
        blur: 0.7,
        fullWell: 16_000,
        readNoise: 30,
      },
      launcher: {
        muzzle: [170, 66],
        axisAngle: 0.005,
        axisStated: false,
        clearTube: false,
        ringDiameter: 0.05,
      },
      // Drag of a smooth sphere as in the other clips; how fast the ball leaves the gas dynamics says.
      shot: { velocity: 150, dragCoefficient: 0.48, muzzleZone: null },
      exitFrame: 36,
      seal: {
        lead: 0,
        bulge: 0.0011,
        opening: 0.00015,
        height: 0.009,
        fragments: 14,
        speed: 150,
      },
      bar: { centre: [400, 134], depthOffsetU: 0.001 },
      sound: null,
    };
  }),
);
