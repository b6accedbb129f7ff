import type { Reported } from '../core/estimate';
import type { Seconds } from '../core/units';
import { onsetDensity } from './growth';
import { heightsOf } from './height';
import { hasMoved, isHidden, type RestState } from './tear';
import { momentFrom, type SealClock, sealTime } from './timing';
import type { SealObservation, SealView } from './types';

/**
 * When the film left its rest position. `whole`: the observations before the tear. The growth of its height is
 * fitted and carried back to zero (see `onsetDensity`).
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
  const at = (o: SealObservation): Seconds => sealTime(clock, view, o.frame);
  const last = whole.at(-1);
  if (last === undefined || !whole.some((o) => hasMoved(o, rest))) {
    return unavailable(
      'bulgeNotSeen',
      'No frame before the tear shows the film out of its rest position.',
    );
  }
  const zero = at(last);
  const interval = zero - sealTime(clock, view, last.frame - 1);
  const readings = heightsOf(whole);
  if (readings.length === 0) {
    return unavailable(
      'bulgeTooFaint',
      'The film stands out too little of the scene to be followed.',
    );
  }
  const densities = readings.flatMap((heights) => {
    const timed = heights.map((height, i) => ({
      ...height,
      time: (at(whole[i] as SealObservation) - zero) / interval,
    }));
    return onsetDensity(timed) ?? [];
  });
  const [density] = densities;
  if (density === undefined) {
    return unavailable('onsetBeforeClip', 'The film is already moving when the clip starts.');
  }
  const film = {
    times: density.times.map((time) => zero + time * interval),
    // Both readings see the film in the same frames: their moments are the same.
    weights: density.weights.map((_, i) =>
      densities.reduce((sum, { weights }) => sum + (weights[i] as number), 0),
    ),
  };
  return momentFrom(film, [], clock, view, coverage).moment;
}

const unavailable = (code: string, message: string): Reported => ({
  unavailable: { code, message },
});
