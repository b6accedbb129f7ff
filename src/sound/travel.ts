import { moistSoundSpeed } from '../core/air';
import type { Estimate } from '../core/estimate';
import type { Shot } from '../shot/schema';
import { effects } from '../uncertainty/propagation';

/** Speed of sound at the shot's air, m/s. */
export function soundSpeedIn({ temperature, pressure, humidity }: Shot['air']): Estimate {
  const model = ([t = 0, p = 0, h = 0]: readonly number[]): readonly number[] => [
    moistSoundSpeed(t, p, Math.min(1, Math.max(0, h))),
  ];
  const readings = [temperature, pressure, humidity];
  const [value = 0] = model(readings.map((reading) => reading.value));
  return { value, u: Math.hypot(...effects(model, readings).map(([moved = 0]) => moved)) };
}

/** Time that sound takes over a distance (m), s. */
export function travelTime(distance: Estimate, speed: Estimate): Estimate {
  const value = distance.value / speed.value;
  return { value, u: Math.hypot(distance.u / speed.value, (value * speed.u) / speed.value) };
}

/**
 * From the backstop to the microphone, m, as stated; else of the triangle with the muzzle only two sides are, and the
 * third is anything from their difference to their sum, as likely.
 */
export function backstopToMicrophone(
  { distance: microphone, toBackstop }: NonNullable<Shot['sound']>['microphone'],
  backstop: Estimate,
): Estimate {
  if (toBackstop !== null) return toBackstop;
  const [a, b] = [microphone.value, backstop.value];
  return {
    value: Math.max(a, b),
    u: Math.hypot(Math.min(a, b) / Math.sqrt(3), a > b ? microphone.u : backstop.u),
  };
}

/** Near the mouth the blast's front outruns sound by up to so much over so far (common practice, no source). */
const BLAST_MACH = 1.3;
const BLAST_REACH = 0.1;

/** How much earlier than sound the front may therefore come, one-sided: the root mean square of 0 to the most, s. */
export const blastLeadU = (microphone: number, speed: number): number =>
  ((Math.min(microphone, BLAST_REACH) / speed) * (1 - 1 / BLAST_MACH)) / Math.sqrt(3);
