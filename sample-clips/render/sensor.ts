import type { Random } from './random';

/** A linear sensor and the grey values it is coded into. */
export interface Sensor {
  readonly fullWell: number;
  readonly readNoise: number;
  /** Grey value of no light and of full scale, largest grey value, and the step between codes. */
  readonly black: number;
  readonly white: number;
  readonly largest: number;
  readonly step: number;
}

/** Share of full scale the sensor reads without light, so that read noise is not cut off. */
export const PEDESTAL = 0.012;

/** 8-bit codes: studio swing (16..235) or full swing, as the codec has it; 12 bits held in the upper bits of 16. */
export const STUDIO = { black: 16, white: 235, largest: 255, step: 1 } as const;
export const FULL = { black: 0, white: 255, largest: 255, step: 1 } as const;
export const TWELVE_IN_SIXTEEN = { black: 0, white: 65_520, largest: 65_520, step: 16 } as const;

/**
 * Grey values of a frame. Photon-transfer model: in electrons the variance is the signal (shot
 * noise) plus the read noise squared, so in grey values it rises in a straight line with the mean
 * (J. R. Janesick, "Photon Transfer", SPIE Press 2007; from memory).
 */
export function read<A extends Uint8Array | Uint16Array>(
  sensor: Sensor,
  radiance: Float32Array,
  random: Random,
  out: A,
): A {
  const { fullWell, readNoise, black, white, largest, step } = sensor;
  const perElectron = (white - black) / fullWell / step;
  const dark = PEDESTAL * fullWell;
  for (let k = 0; k < radiance.length; k++) {
    const signal = Math.max(0, (radiance[k] as number) * fullWell);
    const electrons = signal + dark + random.normal(0, Math.sqrt(signal + readNoise * readNoise));
    const code = Math.round(black / step + electrons * perElectron);
    out[k] = step * Math.min(Math.max(code, 0), largest / step);
  }
  return out;
}
