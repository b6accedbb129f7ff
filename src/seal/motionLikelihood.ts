/** The film's front in three frames one after the other, px; `u`: of the last step over the one before. */
export interface FilmSteps {
  /** Last step of the front over the step before it. */
  readonly ratio: number;
  readonly ratioU: number;
  /** Middle of the exposure of the frame the last step leads to. */
  readonly time: number;
}

/** A film under pressure moves on as fast as before or faster; by how much less it may. */
const SLOWER = 0.25;
const FASTER = 1.2;
/** Torn, it may do anything; a tear this old, in frame intervals, has changed how it moves. */
const TORN_DENSITY = 0.2;
const CHANGED_AFTER = 0.45;

/** Likelihood of each burst instant of a grid from whether the film still moved as it had. */
export function motionLikelihood(
  { ratio, ratioU, time }: FilmSteps,
  exposure: number,
  instants: readonly number[],
): Float64Array {
  const low = Math.hypot(SLOWER, ratioU);
  const high = Math.hypot(FASTER, ratioU);
  const z = ratio < 1 ? (ratio - 1) / low : (ratio - 1) / high;
  const whole = (Math.sqrt(2 / Math.PI) / (low + high)) * Math.exp(-0.5 * z * z);
  return Float64Array.from(instants, (instant) => {
    const open = Math.max(0, time + exposure / 2 - instant);
    const torn = Math.min(1, open / CHANGED_AFTER);
    return (1 - torn) * whole + torn * TORN_DENSITY + 0.01;
  });
}
