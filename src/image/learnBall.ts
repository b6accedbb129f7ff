import { median, robustDeviation } from '../core/statistics';
import type { BallModel, CentreMeasurement } from './types';

/** Share of the outline a frame must show to tell of the ball's look. */
const WELL_SEEN = 0.85;
const FEWEST_FRAMES = 4;
/** The scatter over frames is no smaller than this, however well they agree: px, px and a share. */
const LEAST_RADIUS_U = 0.05;
const LEAST_SIGMA_U = 0.03;
const LEAST_STRETCH_U = 0.02;

/**
 * The ball as the frames that show it well have it: radius, softness, blur and shading. Measured again
 * with these, half-hidden frames no longer have to find them from half an outline, and all frames err
 * alike. Left as it is where fewer than four frames show the ball well.
 */
export function learnBall(ball: BallModel, measured: readonly CentreMeasurement[]): BallModel {
  const seen = measured.flatMap(({ visible, radius, look }) =>
    look !== undefined && visible >= WELL_SEEN ? [{ radius: radius.value, look }] : [],
  );
  const first = seen[0];
  if (first === undefined || seen.length < FEWEST_FRAMES) return ball;
  const radius = robust(seen.map((frame) => frame.radius));
  const sigma = robust(seen.map(({ look }) => look.sigma));
  const stretch = robust(seen.map(({ look }) => look.stretch));
  return {
    ...ball,
    radius: radius.value,
    radiusU: Math.max(LEAST_RADIUS_U, radius.scatter),
    look: {
      sigma: sigma.value,
      sigmaU: Math.max(LEAST_SIGMA_U, sigma.scatter),
      stretch: stretch.value,
      stretchU: Math.max(LEAST_STRETCH_U, stretch.scatter),
      shade: first.look.shade.map((_, j) => median(seen.map(({ look }) => look.shade[j] ?? 0))),
    },
  };
}

/** Median and robust standard deviation. */
function robust(values: readonly number[]): { value: number; scatter: number } {
  const value = median(values);
  return { value, scatter: robustDeviation(values, value) };
}
