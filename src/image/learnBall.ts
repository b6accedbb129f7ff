import { median, robustDeviation } from '../core/statistics';
import { radiusPrior, SIGMA_PRIOR, STRETCH_PRIOR } from './discPriors';
import { learnScatter } from './scatter';
import { learnPattern } from './shadePattern';
import { sureOnes } from './sure';
import type { BallModel, CentreMeasurement } from './types';

/**
 * Frames tell of the ball's look that show nearly as much of the outline as the best do; how much that is
 * also depends on the light: an unlit side may not differ from the background.
 */
const WELL_SEEN_SHARE = 0.92;
const LEAST_SEEN = 0.5;
const FEWEST_FRAMES = 4;
/** No value common to the frames is known better than this: a share of the radius, px and a share. */
const LEAST_RADIUS_SHARE = 2e-4;
const LEAST_SIGMA_U = 0.01;
const LEAST_STRETCH_U = 0.01;
/**
 * A radius this many standard uncertainties off what is stated says that the outline is not all the ball's. Where one
 * half of it is drawn outwards by d the radius grows by d / 2 and the centre moves by 2 d / pi, where all of it is by
 * nothing: this share of the difference, in each direction, stands for both.
 */
const AT_ODDS = 2.5;
const ODD_SHARE = 0.5;
/** Values farther from the median than this many robust standard deviations are left out. */
const STRAY = 4;

/**
 * The ball as the frames that show it well have it: radius, softness, blur and shading, and how far its
 * model and the noise's hold. Measured again with these, half-hidden frames no longer have to find them
 * from half an outline, and all frames err alike. Left as it is where fewer than four frames show the
 * ball well.
 */
export function learnBall(ball: BallModel, measured: readonly CentreMeasurement[]): BallModel {
  const shares = measured.map(({ visible }) => visible).sort((a, b) => b - a);
  const best = shares[Math.floor(shares.length / 5)] ?? 1;
  const least = Math.max(LEAST_SEEN, WELL_SEEN_SHARE * best);
  const whole = measured.filter(({ visible }) => visible >= least);
  if (whole.length < FEWEST_FRAMES) return ball;
  const seen = sureOnes(whole).flatMap((centre) => {
    const { radius, look, evidence } = centre;
    return look !== undefined && evidence !== undefined ? [{ radius, look, evidence }] : [];
  });
  if (seen.length < FEWEST_FRAMES) return ball;
  const stated = radiusPrior(ball);
  const radius = pool(
    seen.map(({ radius: { value, u } }) => ({ value, u })),
    stated,
    LEAST_RADIUS_SHARE * ball.radius,
  );
  const sigma = pool(
    seen.map(({ look, evidence }) => ({ value: look.sigma, u: evidence.sigmaU })),
    SIGMA_PRIOR,
    LEAST_SIGMA_U,
  );
  const stretch = pool(
    seen.map(({ look, evidence }) => ({ value: look.stretch, u: evidence.stretchU })),
    STRETCH_PRIOR,
    LEAST_STRETCH_U,
  );
  const scatter = learnScatter(seen.map(({ evidence }) => evidence));
  const off = Math.abs(radius.value - stated.value);
  const odd = off > AT_ODDS * stated.u ? (ODD_SHARE * off) ** 2 : 0;
  const [x, y] = scatter.unmodelled;
  return {
    ...ball,
    radius: radius.value,
    radiusU: radius.u,
    look: {
      sigma: sigma.value,
      sigmaU: sigma.u,
      stretch: stretch.value,
      stretchU: stretch.u,
      shade: learnPattern(seen.map(({ look }) => look.shade)),
      ...scatter,
      unmodelled: [x + odd, y + odd],
    },
  };
}

interface Known {
  readonly value: number;
  readonly u: number;
}

/**
 * A value common to the frames, and how far one frame may be from it. Each frame's value leans on what
 * was known beforehand; that is taken out of each and put in once, or many frames that know little would
 * seem to confirm it.
 */
function pool(frames: readonly Known[], prior: Known, least: number): Known {
  const middle = median(frames.map(({ value }) => value));
  const spread = robustDeviation(
    frames.map(({ value }) => value),
    middle,
  );
  const kept = frames.filter(({ value }) => Math.abs(value - middle) <= STRAY * spread);
  let information = prior.u ** -2;
  let weighted = prior.value * information;
  let expected = 0;
  for (const { value, u } of kept) {
    information += Math.max(0, u ** -2 - prior.u ** -2);
    if (u < prior.u) weighted += value * u ** -2 - prior.value * prior.u ** -2;
    expected += (u ** 2 * Math.max(0, 1 - (u / prior.u) ** 2)) / kept.length;
  }
  // The scatter is itself known to about its square over the root of half the number of frames.
  const tolerance = 1 + 2 * Math.sqrt(2 / kept.length);
  const beyond = Math.max(0, spread ** 2 - expected * tolerance);
  return {
    value: weighted / information,
    u: Math.sqrt(beyond + 1 / information + least ** 2),
  };
}
