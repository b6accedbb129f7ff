import type { Clock } from '../clock/clock';
import {
  type Estimate,
  isAvailable,
  orUnavailable,
  type Quantity,
  type Reported,
} from '../core/estimate';
import type { AudioTrack } from '../core/film';
import { quantity } from '../core/quantity';
import { failure, type Outcome, type Reason, success } from '../core/reason';
import type { Seconds } from '../core/units';
import type { Result, SoundReport, Warning } from '../shot/result';
import type { Shot } from '../shot/schema';
import { findOnset } from '../sound/onset';
import { backstopToMicrophone, blastLeadU, soundSpeedIn, travelTime } from '../sound/travel';
import { difference, uniformU } from '../uncertainty/quantity';
import type { ReductionInputs } from './types';

/** What the film tells that the sound is set against. */
export type FilmedMoments = Pick<Result, 'sealBurst' | 'exitTime' | 'exitVelocity' | 'lead'>;

export interface SoundConclusion {
  readonly report: Result['sound'];
  readonly warnings: readonly Warning[];
}

/** A recorder's clock keeps within this of the right rate (common practice, no source): half-width. */
const RECORDER_HALF_WIDTH = 50e-6;
/** A sound is looked for this far around where it should be, s, and so many standard uncertainties. */
const MARGIN = 3e-3;
const SPREADS = 4;
/** Where the film shows no burst: so long before the exit at most, s. */
const LONGEST_LEAD = 0.03;
/** From the muzzle to the backstop the ball keeps between these shares of its exit velocity on average. */
const MEAN_OVER_EXIT = [0.6, 1.03] as const;
/** Nearer than this, m, the front's own speed and the microphone's place count for much (common practice, no source). */
const NEAR = 0.5;

const UNDECODABLE: Reason = {
  code: 'soundUndecodable',
  message: 'The sound track could not be decoded.',
  remedy: 'Go on without the sound, or convert it to AAC or PCM.',
};
const NO_TRACK: Reason = {
  code: 'noSoundTrack',
  message: 'Sound is stated, but the footage has no sound track.',
  remedy: 'Use the original clip with its sound, or leave the sound out of the shot.',
};

/** A sound as heard, s on the track's clock, and how long it was on its way. */
interface Heard extends Estimate {
  readonly travel: Estimate;
}

/** Burst and impact as the sound track tells them, and the mean speed between muzzle and backstop. */
export function concludeSound(
  { shot, audio, info }: Pick<ReductionInputs, 'shot' | 'audio' | 'info'>,
  clock: Clock,
  film: FilmedMoments,
): SoundConclusion {
  const { sound } = shot;
  if (sound === null) return { report: null, warnings: [] };
  if (audio === null) {
    return { report: { unavailable: info.hasAudio ? UNDECODABLE : NO_TRACK }, warnings: [] };
  }
  const speed = soundSpeedIn(shot.air);
  // A phone's picture and sound run on one clock; a camera's and a recorder's on two.
  const oneClock = shot.timing.source === 'containerTimestamps';
  const rateU = oneClock ? clock.rateRelativeU : uniformU(RECORDER_HALF_WIDTH);
  const setting: Setting = { shot, sound, audio, speed, rateU, film };

  const burst = burstHeard(setting);
  const impact = impactHeard(setting);
  const onFilm = (heard: Heard): Quantity => {
    const value = heard.value + sound.offset.value - heard.travel.value;
    const u = Math.hypot(heard.u, sound.offset.u, heard.travel.u, value * rateU);
    return quantity(value, u, null, shot.coverage);
  };
  const burstTime = orUnavailable(burst, onFilm);
  const minusFilm = againstFilm(burstTime, film.sealBurst, oneClock ? rateU : 0, shot.coverage);
  const agrees = isAvailable(minusFilm)
    ? minusFilm.interval[0] <= 0 && 0 <= minusFilm.interval[1]
    : null;
  const report: SoundReport = {
    burst: burstTime,
    minusFilm,
    agrees,
    impact: orUnavailable(impact, onFilm),
    meanSpeed: meanSpeed(setting, burst, impact),
  };
  return { report, warnings: warningsOf(setting, report, burst) };
}

interface Setting {
  readonly shot: Shot;
  readonly sound: NonNullable<Shot['sound']>;
  readonly audio: AudioTrack;
  readonly speed: Estimate;
  readonly rateU: number;
  readonly film: FilmedMoments;
}

/** Where on the sound track something filmed between two moments is heard. */
function stretch(
  { sound }: Setting,
  [from, to]: readonly [Seconds, Seconds],
  travel: Estimate,
  u: number,
): readonly [Seconds, Seconds] {
  const shift = travel.value - sound.offset.value;
  const margin = MARGIN + SPREADS * Math.hypot(u, travel.u, sound.offset.u);
  return [from + shift - margin, to + shift + margin];
}

function burstHeard(setting: Setting): Outcome<Heard> {
  const { sound, shot, audio, speed, film } = setting;
  const { sealBurst, exitTime } = film;
  const way = travelTime(sound.microphone.distance, speed);
  const travel = {
    value: way.value,
    u: Math.hypot(way.u, blastLeadU(sound.microphone.distance.value, speed.value)),
  };
  const seen: readonly [Seconds, Seconds, number] | null =
    'value' in sealBurst
      ? [sealBurst.value, sealBurst.value, sealBurst.u]
      : isAvailable(exitTime)
        ? [exitTime.value - LONGEST_LEAD, exitTime.value, exitTime.u]
        : null;
  const between = seen && stretch(setting, [seen[0], seen[1]], travel, seen[2]);
  const onset = findOnset(audio, { between, coverage: shot.coverage, what: 'burst' });
  return onset.ok ? success({ ...onset.value, travel }) : onset;
}

function impactHeard(setting: Setting): Outcome<Heard> {
  const { sound, shot, audio, speed, film } = setting;
  const { exitTime, exitVelocity } = film;
  if (sound.backstopDistance === null) {
    return failure('noBackstop', 'The shot states no backstop.');
  }
  if (!isAvailable(exitTime)) return { ok: false, reason: exitTime.unavailable };
  if (!isAvailable(exitVelocity)) return { ok: false, reason: exitVelocity.unavailable };
  const flown = sound.backstopDistance.value - shot.ball.diameter.value / 2;
  const at = (share: number) => exitTime.value + flown / (share * exitVelocity.value);
  const travel = travelTime(backstopToMicrophone(sound.microphone, sound.backstopDistance), speed);
  const [slowest, fastest] = MEAN_OVER_EXIT;
  const between = stretch(setting, [at(fastest), at(slowest)], travel, exitTime.u);
  const onset = findOnset(audio, { between, coverage: shot.coverage, what: 'impact' });
  return onset.ok ? success({ ...onset.value, travel }) : onset;
}

function againstFilm(
  heard: Reported,
  seen: Result['sealBurst'],
  sharedRateU: number,
  coverage: number,
): Reported {
  if (!isAvailable(heard)) return heard;
  if (!('value' in seen)) return { unavailable: seen.unavailable };
  const covariance = heard.value * seen.value * sharedRateU ** 2;
  const product = heard.u * seen.u;
  const correlation = product > 0 ? Math.min(1, covariance / product) : 0;
  return difference(heard, seen, correlation, coverage);
}

/**
 * Way of the centre from the muzzle plane until the leading point strikes, over the time between. The time starts at the
 * filmed exit, which needs the offset of the sound, or at the burst as heard plus the filmed lead, which does not: the
 * better known counts.
 */
function meanSpeed(
  { sound, shot, film }: Setting,
  burst: Outcome<Heard>,
  impact: Outcome<Heard>,
): Reported {
  if (!impact.ok) return { unavailable: impact.reason };
  const { exitTime, lead } = film;
  if (sound.backstopDistance === null || !isAvailable(exitTime)) {
    throw new Error('An impact is looked for only where backstop and exit are known.');
  }
  const { value: heard, u, travel } = impact.value;
  const fromExit: Estimate = {
    value: heard + sound.offset.value - travel.value - exitTime.value,
    u: Math.hypot(u, sound.offset.u, travel.u, exitTime.u),
  };
  const times = [fromExit];
  if (burst.ok && isAvailable(lead)) {
    times.push({
      value: heard - travel.value - (burst.value.value - burst.value.travel.value) - lead.value,
      u: Math.hypot(u, travel.u, burst.value.u, burst.value.travel.u, lead.u),
    });
  }
  const time = times.reduce((a, b) => (b.u < a.u ? b : a));
  const way = sound.backstopDistance.value - shot.ball.diameter.value / 2;
  if (!(time.value > 0 && way > 0)) {
    return { unavailable: BEFORE_EXIT };
  }
  const value = way / time.value;
  const relative = Math.hypot(
    Math.hypot(sound.backstopDistance.u, shot.ball.diameter.u / 2) / way,
    time.u / time.value,
  );
  return quantity(value, value * relative, null, shot.coverage);
}

const BEFORE_EXIT: Reason = {
  code: 'impactBeforeExit',
  message: 'By the sound the ball strikes the backstop before it leaves the muzzle.',
  remedy:
    'Check the offset between sound and picture, and the distances of microphone and backstop.',
};

function warningsOf(
  { sound, film }: Setting,
  { agrees, minusFilm }: SoundReport,
  burst: Outcome<Heard>,
): Warning[] {
  const warnings: Warning[] = [];
  if (agrees === false && isAvailable(minusFilm)) {
    const by = Math.abs(1e3 * minusFilm.value).toFixed(2);
    const form = minusFilm.value > 0 ? 'later' : 'earlier';
    warnings.push({
      code: 'soundDisagrees',
      values: { form, by },
      message: `By the sound the seal burst ${by} ms ${form} than on the film, more than their uncertainties explain.`,
      remedy:
        'Check the offset between sound and picture with a filmed clap, the distance of the microphone, and the frames of the burst.',
    });
  }
  if (sound.microphone.distance.value < NEAR) {
    warnings.push({
      code: 'microphoneNear',
      values: { distance: `${sound.microphone.distance.value}` },
      message: `The microphone is ${sound.microphone.distance.value} m from the muzzle, where the blast's front is faster than sound and its time less well known.`,
      remedy: 'Set it a metre away or more, and measure the distance.',
    });
  }
  if (burst.ok && !('value' in film.sealBurst) && !isAvailable(film.exitTime)) {
    warnings.push({
      code: 'soundUnplaced',
      message:
        'The film shows neither burst nor exit, so the first loud sound of the track is taken for the burst.',
      remedy: 'Listen to the track: the puncture of a rear seal is heard before the burst.',
    });
  }
  return warnings;
}
