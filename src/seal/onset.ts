import type { Reported } from '../core/estimate';
import type { Seconds } from '../core/units';
import { hasMoved, isHidden, type RestState } from './tear';
import { momentIn, type SealClock, sealTime, typeB } from './timing';
import type { SealObservation, SealView } from './types';

/** Growth laws a bulge may follow at first, as powers of the time since its onset. */
const SLOW_START = 3;
const SUDDEN_START = 1;

/**
 * When the film left its rest position. `whole`: the observations before the tear. The height is carried back to
 * zero as a straight and as a cubic growth; the onset lies between the two, and before it was first seen moving.
 */
export function locateOnset(
  whole: readonly SealObservation[],
  rest: RestState,
  clock: SealClock,
  view: SealView,
  coverage: number,
): Reported {
  if (isHidden(rest)) {
    return unavailable(
      'restHidden',
      'The scene behind the seal differs from the film at rest by more than its first movement.',
    );
  }
  let first = whole.length;
  while (first > 0 && hasMoved(whole[first - 1] as SealObservation, rest)) first--;
  if (first === whole.length) {
    return unavailable(
      'bulgeNotSeen',
      'No frame before the tear shows the film out of its rest position.',
    );
  }
  if (first === 0) {
    return unavailable('onsetBeforeClip', 'The film is already moving when the clip starts.');
  }
  const moving = whole.slice(first);
  const times = moving.map((o) => sealTime(clock, view, o.frame));
  const heights = moving.map((o) => o.front - rest.front);
  const seen = times[0] as Seconds;
  const still = sealTime(clock, view, (whole[first - 1] as SealObservation).frame);
  const interval = seen - still;
  const bound = (power: number): Seconds | null => zeroCrossing(times, heights, power);
  const to = Math.min(seen, bound(SUDDEN_START) ?? seen);
  const from = Math.min(still, to - interval, bound(SLOW_START) ?? still);
  const source = `Growth law of the bulge, first seen in frame ${(moving[0] as SealObservation).frame}`;
  // Noise of the height, over the speed with which the film left.
  const speed = Math.max((heights[0] as number) / interval, Number.MIN_VALUE);
  const noise = typeB('Noise of the film edge', rest.frontU, 'px', 1 / speed);
  return momentIn({ from, to, source }, { early: 0, late: 0 }, [noise], clock, view, coverage)
    .moment;
}

const unavailable = (code: string, message: string): Reported => ({
  unavailable: { code, message },
});

/** Where the straight line through (height^(1/power), time), least squares, meets zero; null: no growth. */
function zeroCrossing(
  times: readonly Seconds[],
  heights: readonly number[],
  power: number,
): Seconds | null {
  const roots = heights.map((h) => Math.max(0, h) ** (1 / power));
  const n = times.length;
  const meanTime = times.reduce((a, b) => a + b, 0) / n;
  const meanRoot = roots.reduce((a, b) => a + b, 0) / n;
  let product = 0;
  let square = 0;
  times.forEach((t, i) => {
    product += (t - meanTime) * ((roots[i] as number) - meanRoot);
    square += (t - meanTime) ** 2;
  });
  return square > 0 && product > 0 ? meanTime - (meanRoot * square) / product : null;
}
