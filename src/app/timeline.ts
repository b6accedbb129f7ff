import { isAvailable, type Quantity, type Reported } from '../core/estimate';
import type { Timeline, TimelineEvent } from '../core/timeline';
import type { Result, SealBurst } from '../shot/result';

/** Every moment a result states. Null: it states none. */
export function timelineOf(result: Result): Timeline | null {
  const { exitTime, lead, flight, sound, sealBurst, rearBurst } = result;
  const origin = isAvailable(exitTime) ? exitTime.value : 0;
  const stated: (TimelineEvent | null)[] = [
    event('puncture', instant(rearBurst), origin),
    event('onset', 'value' in sealBurst ? sealBurst.bulgeOnset : null, origin),
    // Burst and exit share the clock's errors: their difference is known better, or worse, than either tells.
    isAvailable(lead)
      ? event('burst', backwards(lead), 0)
      : event('burst', instant(sealBurst), origin),
    event('contact', result.contact, origin),
    event('exit', exitTime, origin),
    event('target', flight.target?.time ?? null, origin),
  ];
  if (sound !== null && 'burst' in sound) {
    stated.push(event('burstHeard', sound.burst, origin));
    stated.push(event('impactHeard', sound.impact, origin));
  }
  const events = stated.filter((one) => one !== null).sort((a, b) => a.time - b.time);
  const known = [exitTime, sealBurst].find((one) => 'coverage' in one);
  if (events.length === 0 || known === undefined || !('coverage' in known)) return null;
  return { events, from: isAvailable(exitTime) ? 'exit' : 'clock', coverage: known.coverage };
}

const instant = (burst: SealBurst | null): Reported | null =>
  burst !== null && 'value' in burst ? burst : null;

const backwards = ({ interval: [low, high], ...rest }: Quantity): Quantity => ({
  ...rest,
  value: -rest.value,
  interval: [-high, -low],
});

function event(
  kind: TimelineEvent['kind'],
  reported: Reported | null,
  origin: number,
): TimelineEvent | null {
  if (reported === null || !isAvailable(reported)) return null;
  const [low, high] = reported.interval;
  return { kind, time: reported.value - origin, low: low - origin, high: high - origin };
}
