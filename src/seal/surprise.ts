/** One growing quantity: frames and values, in order. */
export type Growth = readonly (readonly [frame: number, value: number])[];

/** A forecast may miss by this many times its worst miss so far, and by this share of the last step. */
const MISS_FACTOR = 2.5;
const STEP_SHARE = 0.12;
/** Forecasts judged before their misses are trusted; until then this share of the last step is allowed. */
const FEWEST_MISSES = 2;
const UNTRIED_SHARE = 0.75;

/**
 * How far the last value departs from steady acceleration (the step expected is the last one and as much more as it
 * outgrew the one before), in units of what may be missed: `floor`, a share of the step, or a multiple of what
 * the same forecast missed earlier in the same growth. 0 where too little was seen to forecast.
 */
export function surprise(growth: Growth, floor: number): number {
  const misses: number[] = [];
  for (let i = 3; i < growth.length; i++) misses.push(stepAt(growth, i) - forecast(growth, i));
  const miss = misses.pop();
  if (miss === undefined) return 0;
  const step = Math.abs(stepAt(growth, growth.length - 2));
  const allowed =
    misses.length < FEWEST_MISSES
      ? UNTRIED_SHARE * step
      : Math.max(STEP_SHARE * step, MISS_FACTOR * Math.max(...misses.map(Math.abs)));
  return miss / Math.max(floor, allowed);
}

/** Change per frame into the i-th value. */
function stepAt(growth: Growth, i: number): number {
  const [frame, value] = growth[i] as Growth[number];
  const [frameBefore, valueBefore] = growth[i - 1] as Growth[number];
  return (value - valueBefore) / (frame - frameBefore);
}

const forecast = (growth: Growth, i: number): number =>
  2 * stepAt(growth, i - 1) - stepAt(growth, i - 2);
