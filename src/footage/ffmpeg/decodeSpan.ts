import type { Span } from '../range';
import type { SyncReader } from '../reader';
import { turnUpright } from '../rotate';
import type { Timeline } from '../timeline';
import { type CoreOutcome, type RunCore, textOutput } from './core';
import { DamageWatch, WITH_SUMS } from './damage';
import { decodingFailed } from './failures';
import { FrameCutter, samplesOf } from './frames';
import type { GreyPlan } from './grey';
import type { VideoStream } from './probe';

/** How a film's picture is decoded; can be handed to other threads. */
export interface FilmFacts {
  readonly module: WebAssembly.Module;
  readonly stream: VideoStream;
  readonly plan: GreyPlan;
  readonly timeline: Timeline;
  /** First time of all the file's streams, s. */
  readonly startTime: number;
  /** False: frames are found by counting from the first one. */
  seekable: boolean;
}

export interface Film extends FilmFacts {
  readonly reader: SyncReader;
  readonly run: RunCore;
}

export const frameBytes = ({ stream, plan }: FilmFacts) =>
  stream.width * stream.height * plan.bytesPerSample;

/** The grey values of a plane as decoded, upright. */
export const uprightIn =
  ({ stream, plan }: FilmFacts) =>
  (plane: Uint8Array) =>
    turnUpright(
      samplesOf(plane, plan.bytesPerSample),
      stream.width,
      stream.height,
      stream.rotation,
    );

/** The same in memory of their own: what a span gives is lent. */
export const copyIn = (film: FilmFacts) => {
  const upright = uprightIn(film);
  return (plane: Uint8Array) => upright(plane.slice());
};

/**
 * What is kept of the wanted planes of a span: sought by the container's index and verified by their timestamps to be
 * the ones asked for, or counted to from the first frame where the index leads elsewhere. Throws `decoderFailed`.
 */
export async function decodeSpan<Kept>(
  film: Film,
  span: Span,
  keep: (plane: Uint8Array) => Kept,
): Promise<Kept[]> {
  if (film.seekable) {
    const run = await runFrom(film, span, span.first, keep);
    if (isOfTheirTimes(film, run) && (run.whole || span.first === 0 || !run.wentWell)) {
      return keptIn(film, run);
    }
  }
  const kept = keptIn(film, await runFrom(film, span, 0, keep));
  film.seekable = false; // the index leads astray, and it is not damage that made it seem so
  return kept;
}

/** What came of decoding from frame `start` on. */
interface SpanRun<Kept> {
  readonly start: number;
  readonly kept: readonly (Kept | null)[];
  readonly outcome: CoreOutcome;
  /** To its end. */
  readonly wentWell: boolean;
  readonly complaint: DamageWatch['complaint'];
  /** All frames asked for, and no complaint. */
  readonly whole: boolean;
  /** Presentation times, ticks. */
  readonly times: readonly number[];
}

async function runFrom<Kept>(
  film: Film,
  span: Span,
  start: number,
  keep: (plane: Uint8Array) => Kept,
): Promise<SpanRun<Kept>> {
  const { run, reader, stream, plan } = film;
  const wanted = new Set(span.wanted);
  const cutter = new FrameCutter(frameBytes(film), (place) => wanted.has(start + place), keep);
  const watch = new DamageWatch(stream.codec, () => cutter.frames.length);
  const times = textOutput();
  const count = span.last - start + 1;
  const output = ['-map', `0:${stream.index}`, '-fps_mode', 'passthrough', '-frames:v', `${count}`];
  const outcome = await run({
    program: 'ffmpeg',
    args: [
      ...['-v', 'error', '-xerror', '-noautorotate', ...WITH_SUMS],
      ...(start > 0 ? ['-ss', seekTime(film, start)] : []),
      ...['-copyts', '-i', '/in/clip'],
      ...[...output, '-vf', plan.filter, '-autoscale', '0', '-f', 'rawvideo'],
      ...['-flush_packets', '1', '/out/grey'],
      ...[...output, '-enc_time_base', '-1', '-c:v', 'wrapped_avframe', '-f', 'framecrc'],
      '/out/times',
    ],
    inputs: { clip: reader },
    outputs: { grey: (bytes) => cutter.take(bytes), times: times.take },
    hear: (line) => watch.hear(line),
  });
  const wentWell = outcome.exitCode === 0;
  const complaint = wentWell ? watch.complaint : null; // else the last line says why it stopped
  const complete = cutter.frames.length === count && cutter.remainder === 0;
  const whole = wentWell && complaint === null && complete;
  const kept = cutter.frames;
  return {
    start,
    kept,
    outcome,
    wentWell,
    complaint,
    whole,
    times: presentationTimes(times.text()),
  };
}

const isOfTheirTimes = ({ timeline }: Film, { start, times }: SpanRun<unknown>): boolean =>
  times.every((time, i) => time === timeline.ticks[start + i]);

/** The frames kept. Throws `decoderFailed` where the run is not whole. */
function keptIn<Kept>({ timeline }: Film, run: SpanRun<Kept>): Kept[] {
  const { start, kept, outcome, complaint } = run;
  if (run.whole) return kept.filter((frame) => frame !== null);
  const frame = start + (complaint?.after ?? kept.length);
  throw decodingFailed(
    {
      said: `frame ${frame} of ${timeline.count}`,
      values: { at: 'frame', frame, frames: timeline.count },
    },
    outcome,
    complaint?.said ?? null,
  );
}

/** Ticks longer than a microsecond's rounding by so much are met exactly, s. */
const EXACT_TICK = 4e-6;

/**
 * Where to have ffmpeg begin, s. At a key frame its own time: from any before it, all is decoded and dropped since the
 * key frame before. Else, and where ticks are about as fine as ffmpeg's microseconds, a place between the frame and the
 * one before, nearer to the frame, because frames may be a single tick apart.
 */
function seekTime({ timeline, startTime }: Film, index: number): string {
  const { ticks, ticksPerSecond, key } = timeline;
  const exact = key[index] === 1 && ticksPerSecond <= 1 / EXACT_TICK;
  const share = exact ? 1 : 0.75;
  const at = share * (ticks[index] as number) + (1 - share) * (ticks[index - 1] as number);
  return (at / ticksPerSecond - startTime).toFixed(6);
}

/** Third column of a `framecrc` listing, ticks. */
function presentationTimes(listing: string): number[] {
  return listing
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => Number(line.split(',')[2]));
}
