import type { Equations } from './discEquations';
import { type Disc, GEOMETRY } from './discModel';
import { LAMP, LIMB } from './discShade';
import type { BallModel } from './types';

/** Softness of an edge that in-focus optics and the pixel give, px, and how far that may be off. */
export const SIGMA_PRIOR = { value: 0.9, u: 1 } as const;
/** Standard uncertainty of the radius as a share, where nothing better is known. */
const RADIUS_U = 0.03;
/** Motion blur over that expected. */
export const STRETCH_PRIOR = { value: 1, u: 0.15 } as const;
/** Size of the terms of the brightness as shares of its level: linear in the normal, of second order, the lamp. */
const SHADE_U = [0.1, 0.05, 1] as const;
/** Without the lamp the polynomial has to stand for it. */
const ALONE_U = 0.4;
const NO_LAMP_U = 1e-4;
/** Darkening of the limb, a share. */
const LIMB_U = 0.15;
/** Tilt of the brightness against the known look, as a share of the contrast. */
const TILT_U = 0.002;
/** In the opening rounds all but place and simple shading is held by this factor, lest it follow a wrong place. */
const HELD = 0.15;

/** The radius as it is known beforehand. */
export const radiusPrior = ({ radius, radiusU }: BallModel) => ({
  value: radius,
  u: radiusU ?? RADIUS_U * radius,
});

interface Brightness {
  readonly contrast: number;
  readonly level: number;
}

interface PriorStage {
  readonly lamp: boolean;
  readonly held: boolean;
}

/**
 * Adds what is known beforehand to the normal equations of a fit: the radius; that an edge is about as
 * soft as a pixel; the blur; that shading is a share of the contrast. `scale2` undoes the noise scale of
 * the equations, so that these count in true units; without `lamp` there is none, and `held` holds what must not move yet.
 */
export function addPriors(
  { normal, rhs }: Equations,
  disc: Disc,
  ball: BallModel,
  brightness: Brightness,
  scale2: number,
  stage: PriorStage,
): void {
  const count = rhs.length;
  forEachPrior(disc, ball, brightness, stage, (j, offset, u) => {
    const w = scale2 / (u * u);
    normal[j * count + j] = (normal[j * count + j] as number) + w;
    rhs[j] = (rhs[j] as number) + w * offset;
  });
}

/** Sum of squares of what is off from what is known beforehand, over its standard uncertainty. */
export function priorCost(
  disc: Disc,
  ball: BallModel,
  brightness: Brightness,
  stage: PriorStage,
): number {
  let sum = 0;
  forEachPrior(disc, ball, brightness, stage, (_, offset, u) => {
    sum += (offset / u) ** 2;
  });
  return sum;
}

function forEachPrior(
  disc: Disc,
  ball: BallModel,
  { contrast, level }: Brightness,
  { lamp, held: holding }: PriorStage,
  add: (j: number, offset: number, u: number) => void,
): void {
  const held = holding ? HELD : 1;
  const { look } = ball;
  add(2, ball.radius - disc.radius, held * radiusPrior(ball).u);
  add(3, (look?.sigma ?? SIGMA_PRIOR.value) - disc.sigma, held * (look?.sigmaU ?? SIGMA_PRIOR.u));
  const stretch = look?.stretch ?? STRETCH_PRIOR.value;
  add(4, stretch - disc.stretch, held * (look?.stretchU ?? STRETCH_PRIOR.u));
  const size = Math.max(1, look === undefined ? level : Math.abs(contrast));
  const { shade } = disc;
  for (let j = 1; j < shade.length; j++) {
    let u = TILT_U;
    if (look === undefined) {
      if (j < 4) u = lamp && !holding ? SHADE_U[0] : ALONE_U;
      else if (j < LAMP) u = held * (lamp ? SHADE_U[1] : ALONE_U);
      else if (j < LIMB) u = lamp && !holding ? SHADE_U[2] : NO_LAMP_U;
      else {
        add(GEOMETRY + j, -(shade[j] as number), lamp && !holding ? LIMB_U : NO_LAMP_U);
        continue;
      }
    }
    add(GEOMETRY + j, -(shade[j] as number), u * size);
  }
}

/** Sum of squares of the polynomial's terms over their expected sizes, at this level of brightness. */
export function shadeStrain(shade: ArrayLike<number>, level: number): number {
  let sum = 0;
  for (let j = 1; j < LAMP; j++)
    sum += ((shade[j] as number) / (level * SHADE_U[j < 4 ? 0 : 1])) ** 2;
  return sum;
}
