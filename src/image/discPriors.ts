import { type Disc, GEOMETRY, meanBrightness, PARAMETERS, TERMS } from './discModel';
import type { BallModel } from './types';

/** Softness of an edge that in-focus optics and the pixel give, px, and how far that may be off. */
export const START_SIGMA = 0.9;
const SIGMA_U = 1;
/** Standard uncertainties of radius and blur length as shares, where nothing better is known. */
const RADIUS_U = 0.03;
const STRETCH_U = 0.15;
/** Size of the terms of the brightness as shares of the contrast: linear in the normal, of second order, beyond. */
const SHADE_U = [0.6, 0.4, 0.2] as const;
/** Once the look is known: how far each term of the brightness may be from it, as a share of the contrast. */
const LOOK_U = 0.03;
/** In the opening rounds all but place and simple shading is held by this factor, lest it follow a wrong place. */
const HELD = 0.15;

/**
 * Adds what is known beforehand to the normal equations of a fit: the radius; that an edge is about as
 * soft as a pixel; the blur; that shading is a share of the contrast. `scale2` undoes the noise scale of
 * the equations, so that these count in true units; `opening` holds what must not move yet.
 */
export function addPriors(
  { normal, rhs }: { readonly normal: Float64Array; readonly rhs: Float64Array },
  disc: Disc,
  ball: BallModel,
  contrast: number,
  scale2: number,
  opening: boolean,
): void {
  const held = opening ? HELD : 1;
  const add = (j: number, offset: number, u: number) => {
    const w = scale2 / (u * u);
    normal[j * PARAMETERS + j] = (normal[j * PARAMETERS + j] as number) + w;
    rhs[j] = (rhs[j] as number) + w * offset;
  };
  const { look } = ball;
  add(2, ball.radius - disc.radius, held * (ball.radiusU ?? RADIUS_U * ball.radius));
  add(3, (look?.sigma ?? START_SIGMA) - disc.sigma, held * (look?.sigmaU ?? SIGMA_U));
  add(4, (look?.stretch ?? 1) - disc.stretch, held * (look?.stretchU ?? STRETCH_U));
  const size = Math.max(1, Math.abs(contrast));
  const level = meanBrightness(disc.shade);
  for (let j = 0; j < TERMS; j++) {
    const value = disc.shade[j] as number;
    if (look !== undefined) {
      add(GEOMETRY + j, level * (look.shade[j] ?? 0) - value, LOOK_U * size);
    } else if (j > 0) {
      const u = j < 4 ? SHADE_U[0] : held * (j < 9 ? SHADE_U[1] : SHADE_U[2]);
      add(GEOMETRY + j, -value, u * size);
    }
  }
}
