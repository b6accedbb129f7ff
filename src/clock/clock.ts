import type { FootageInfo } from '../core/film';
import { failure, type Outcome, success } from '../core/reason';
import type { Pixels, Seconds } from '../core/units';
import type { Warning } from '../shot/result';
import type { Readout, Timing } from '../shot/schema';

/** Turns frames and image lines into seconds. Zero: mid-exposure of frame 0 at the first line read. */
export interface Clock {
  /** Mid-exposure of a frame at its first line, s. */
  frameTime(frame: number): Seconds;
  /** Lines read before the one at (x, y). */
  lineAt(x: Pixels, y: Pixels): Pixels;
  /** Mid-exposure of the line at (x, y). */
  timeAt(frame: number, x: Pixels, y: Pixels): Seconds;
  /** Typical time between frames, s. */
  readonly frameInterval: Seconds;
  /** Standard uncertainty of a frame's time that is its own (time stamp resolution), s. */
  readonly frameTimeU: Seconds;
  /** Relative standard uncertainty of every interval alike. */
  readonly rateRelativeU: number;
  readonly lineTime: Timing['readout']['lineTime'];
  readonly warnings: readonly Warning[];
}

/** Common phone and camera clocks keep within 50 parts in a million (common practice, no source): a half-width. */
const CRYSTAL_HALF_WIDTH = 50e-6;
/** Time stamps in containers are commonly whole microseconds or finer: half-width of the rounding, s. */
const TIMESTAMP_HALF_STEP = 0.5e-6;
/** Beyond this ratio the typed rate and the container's disagree by more than a slip of the last digit. */
const RATE_DISAGREEMENT = 1.02;
/** A gap this much longer than the median counts as lost frames; this much shorter, as a repeat. */
const LONG_GAP = 1.6;
const SHORT_GAP = 0.4;

/**
 * Builds the clock of a shot.
 * Failures: `noTimestamps` (the container has none), `noRate`, `timestampsNotRising`, `droppedOutside`.
 */
export function buildClock(
  timing: Timing,
  info: Pick<FootageInfo, 'width' | 'height' | 'frameCount' | 'playbackRate'>,
  timestamps: Float64Array | null,
): Outcome<Clock> {
  const outside = timing.droppedFrames.find((gap) => gap.after >= info.frameCount - 1);
  if (outside !== undefined) {
    return failure(
      'droppedOutside',
      `Frames are stated as lost after frame ${outside.after}, but the film ends at frame ${info.frameCount - 1}.`,
      'Correct the list of lost frames.',
      { after: outside.after, last: info.frameCount - 1 },
    );
  }
  const lineAt = lineCounter(timing.readout.direction, info.width, info.height);
  const lineTime = timing.readout.lineTime;
  const base =
    timing.source === 'containerTimestamps'
      ? fromTimestamps(timing, info.frameCount, timestamps)
      : fromRate(timing, info, timestamps);
  if (!base.ok) return base;
  const { frameTime } = base.value;
  return success({
    ...base.value,
    lineAt,
    lineTime,
    timeAt: (frame, x, y) => frameTime(frame) + lineAt(x, y) * lineTime.value,
  });
}

type Base = Pick<
  Clock,
  'frameTime' | 'frameInterval' | 'frameTimeU' | 'rateRelativeU' | 'warnings'
>;

function fromRate(
  timing: Timing,
  info: Pick<FootageInfo, 'playbackRate'>,
  timestamps: Float64Array | null,
): Outcome<Base> {
  const rate = timing.recordingRate;
  if (rate === null) {
    return failure(
      'noRate',
      'No recording rate is given.',
      "Type the rate set on the camera, or use the file's own time stamps.",
    );
  }
  const lostBefore = (frame: number) =>
    timing.droppedFrames.reduce((sum, gap) => (frame > gap.after ? sum + gap.count : sum), 0);
  const warnings: Warning[] = [];
  const uneven = timestamps === null ? null : gapsOf(timestamps);
  if (uneven !== null && uneven.irregular > 0) {
    warnings.push({
      code: 'timestampsUneven',
      message: `The file's own time stamps are uneven (${uneven.irregular} gaps), but an even recording rate is used.`,
      remedy: "For a phone clip use the file's time stamps; else state the frames that were lost.",
      values: { gaps: uneven.irregular },
    });
  }
  const playback = info.playbackRate;
  if (playback !== null && playback > 61 && disagree(playback, rate.value)) {
    warnings.push({
      code: 'ratesDisagree',
      message: `The typed rate is ${rate.value} frames/s, the file says ${playback.toPrecision(5)}.`,
      values: { form: 'typed', rate: `${rate.value}`, file: playback.toPrecision(5) },
      remedy: 'Check which of the two the camera really recorded at, with a filmed timer or lamp.',
    });
  }
  return success({
    frameTime: (frame) => (frame + lostBefore(frame)) / rate.value,
    frameInterval: 1 / rate.value,
    frameTimeU: 0,
    rateRelativeU: rate.u / rate.value,
    warnings,
  });
}

function fromTimestamps(
  timing: Timing,
  frameCount: number,
  timestamps: Float64Array | null,
): Outcome<Base> {
  if (timestamps === null || timestamps.length < 2) {
    return failure(
      'noTimestamps',
      'The file holds no time stamps of its own.',
      'Type the recording rate instead.',
    );
  }
  const first = timestamps[0] as number;
  for (let i = 1; i < timestamps.length; i++) {
    if (!((timestamps[i] as number) > (timestamps[i - 1] as number))) {
      return failure(
        'timestampsNotRising',
        `The file's time stamps do not rise at frame ${i}.`,
        'Type the recording rate instead.',
        { frame: i },
      );
    }
  }
  const gaps = gapsOf(timestamps);
  const warnings: Warning[] = [];
  if (gaps.long > 0) {
    warnings.push({
      code: 'framesLost',
      message: `The time stamps leave room for lost frames at ${gaps.long} places; their times are kept as stated.`,
      remedy: 'Nothing to do if the camera lost frames; the fit uses the stated times.',
      values: { form: 'gaps', places: gaps.long },
    });
  }
  const rate = timing.recordingRate;
  if (rate !== null && disagree(rate.value, 1 / gaps.median)) {
    const file = (1 / gaps.median).toPrecision(5);
    warnings.push({
      code: 'ratesDisagree',
      values: { form: 'stamps', rate: `${rate.value}`, file },
      message: `The file's time stamps give ${file} frames/s, the stated recording rate is ${rate.value}.`,
      remedy:
        'If the clip was slowed down when it was saved, use the recording rate as the clock instead.',
    });
  }
  if (gaps.median > 1 / 61 && rate === null) {
    warnings.push({
      code: 'playbackRateSuspected',
      message: `The time stamps give ${(1 / gaps.median).toPrecision(4)} frames/s, a usual playback rate.`,
      remedy:
        'If the camera recorded faster than that, type its recording rate: all speeds scale with it.',
      values: { rate: (1 / gaps.median).toPrecision(4) },
    });
  }
  const at = (frame: number) =>
    (timestamps[Math.min(Math.max(frame, 0), frameCount - 1)] as number) - first;
  return success({
    frameTime: at,
    frameInterval: gaps.median,
    frameTimeU: TIMESTAMP_HALF_STEP / Math.sqrt(3),
    rateRelativeU: CRYSTAL_HALF_WIDTH / Math.sqrt(3),
    warnings,
  });
}

const disagree = (a: number, b: number): boolean => {
  const ratio = a / b;
  return ratio > RATE_DISAGREEMENT || ratio < 1 / RATE_DISAGREEMENT;
};

/** Median gap between time stamps and how many stand out from it. */
export function gapsOf(timestamps: Float64Array): {
  median: Seconds;
  long: number;
  short: number;
  irregular: number;
} {
  const gaps = timestamps.slice(1).map((t, i) => t - (timestamps[i] as number));
  const median = gaps.slice().sort()[gaps.length >> 1] ?? 0;
  let long = 0;
  let short = 0;
  for (const gap of gaps) {
    if (gap > LONG_GAP * median) long++;
    else if (gap < SHORT_GAP * median) short++;
  }
  return { median, long, short, irregular: long + short };
}

function lineCounter(
  direction: Readout['direction'],
  width: Pixels,
  height: Pixels,
): (x: Pixels, y: Pixels) => Pixels {
  switch (direction) {
    case 'down':
      return (_x, y) => y;
    case 'up':
      return (_x, y) => height - 1 - y;
    case 'right':
      return (x) => x;
    case 'left':
      return (x) => width - 1 - x;
  }
}
