import type { Seconds } from '../core/units';
import type { Light } from '../shot/planning';

/** How a plan's picture is lit beside the one that the light was read off. */
export interface Lighting {
  readonly contrastToNoise: number;
  /** Light on a pixel during the exposure, as a multiple. */
  readonly exposed: number;
  /** How many times more light keeps the picture as bright at this exposure. */
  readonly needed: number;
  /** Grey of the brighter of ball and background as a share of white; null: not stated. */
  readonly brightest: number | null;
}

/**
 * The picture at an exposure. Its light goes with exposure and lamps; a field of view filmed at the same aperture
 * leaves it as it is, as long as the lens is many focal lengths away. Of a contrast-to-noise ratio alone nothing is
 * known about its noise: with less light it falls in proportion (read noise), with more it rises as the root (shot
 * noise), the worse of what can be either time. A sensor has shot noise, read noise and rounding (EMVA Standard 1288,
 * linear model).
 */
export function lightingAt(light: Light, exposure: Seconds): Lighting {
  const needed = light.exposure / exposure;
  const exposed = light.factor / needed;
  if (light.kind === 'contrast') {
    const ratio = exposed < 1 ? exposed : Math.sqrt(exposed);
    return { contrastToNoise: light.contrastToNoise * ratio, exposed, needed, brightest: null };
  }
  const { fullWell, readNoise, bitDepth } = light;
  const grey = (share: number) => share * exposed;
  const [ball, background] = [grey(light.ball), grey(light.background)];
  const step = fullWell / (2 ** bitDepth - 1);
  // At the edge half a pixel is ball, half background.
  const noise = Math.sqrt(((ball + background) / 2) * fullWell + readNoise ** 2 + step ** 2 / 12);
  return {
    contrastToNoise: (Math.abs(ball - background) * fullWell) / noise,
    exposed,
    needed,
    brightest: Math.max(ball, background),
  };
}
