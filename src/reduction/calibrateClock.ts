import { readLamp } from '../clock/lampProfile';
import { type LineTimeReport, measureLineTime } from '../clock/lineTime';
import type { Estimate } from '../core/estimate';
import type { FootageInfo, FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';
import { failure, type Outcome } from '../core/reason';
import type { FramesPerSecond } from '../core/units';
import type { Readout } from '../shot/schema';

/** What is stated about a clip of a lamp. */
export interface LampQuestion {
  /** Frequency of the mains, Hz; the lamp brightens twice in each period. */
  readonly mains: Estimate;
  /** Rate the clip was recorded at; null: its own time stamps hold. */
  readonly rate: FramesPerSecond | null;
  /** Direction of readout, taken only where the frames leave it open. */
  readonly assumed: Readout['direction'] | null;
}

/** The part of a `FrameSource` that is needed. */
export interface LampClip {
  readonly info: Pick<FootageInfo, 'name' | 'frameCount'>;
  timestamps(): Promise<Float64Array | null>;
  frames(range: FrameRange): AsyncIterable<GreyFrame>;
}

/** More frames tell nothing new, and their profiles fill the memory. */
const MOST_FRAMES = 3000;

/**
 * Line time and direction of readout from a clip of a lamp on the mains. `onShare` gets 0..1.
 * Failures: `noTimeStamps`, and those of `measureLineTime`.
 */
export async function lineTimeFromLamp(
  clip: LampClip,
  { mains, rate, assumed }: LampQuestion,
  onShare: (share: number) => void = () => undefined,
): Promise<Outcome<LineTimeReport>> {
  const stamps = rate === null ? await clip.timestamps() : null;
  if (rate === null && stamps === null) {
    return failure(
      'noTimeStamps',
      `"${clip.info.name}" holds no time stamps of its own.`,
      'State the rate it was recorded at.',
      { name: clip.info.name },
    );
  }
  const end = Math.min(clip.info.frameCount, MOST_FRAMES);
  const profiles = await readLamp(clip.frames({ start: 0, end }), (done) => onShare(done / end));
  const times =
    rate === null ? (stamps ?? []).slice(0, profiles.length) : profiles.map((_, i) => i / rate);
  const flicker = { value: 2 * mains.value, u: 2 * mains.u };
  return measureLineTime(profiles, times, flicker, assumed);
}
