import { ExitframeError } from '../../core/reason';
import type { Span } from '../range';
import type { SyncReader } from '../reader';
import { turnUpright } from '../rotate';
import type { Timeline } from '../timeline';
import { type RunCore, textOutput } from './core';
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

/** What is kept of the wanted planes of a span, verified by their timestamps to be the ones asked for. */
export async function decodeSpan<Kept>(
  film: Film,
  span: Span,
  keep: (plane: Uint8Array) => Kept,
): Promise<Kept[]> {
  if (film.seekable) {
    const kept = await tryDecode(film, span, span.first, keep);
    if (kept !== null) return kept;
    film.seekable = false; // the container's own index leads astray
  }
  const kept = await tryDecode(film, span, 0, keep);
  if (kept !== null) return kept;
  throw new ExitframeError(
    'decoderFailed',
    `The decoder gave other frames than ${span.first} to ${span.last}: their times are not the container's.`,
    'Convert the clip to another container, such as MP4, and open that.',
    { values: { form: 'otherFrames', first: span.first, last: span.last } },
  );
}

/** Decodes from frame `start` on; null where what comes there is not what was asked for. */
async function tryDecode<Kept>(
  film: Film,
  span: Span,
  start: number,
  keep: (plane: Uint8Array) => Kept,
): Promise<Kept[] | null> {
  const { run, reader, stream, plan, timeline } = film;
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
  const shown = presentationTimes(times.text());
  if (film.seekable && shown.some((time, i) => time !== timeline.ticks[start + i])) return null;
  if (!whole && start > 0 && wentWell) return null;
  if (!whole) {
    const frame = start + (complaint?.after ?? cutter.frames.length);
    throw decodingFailed(
      {
        said: `frame ${frame} of ${timeline.count}`,
        values: { at: 'frame', frame, frames: timeline.count },
      },
      outcome,
      complaint?.said ?? null,
    );
  }
  return cutter.frames.filter((frame) => frame !== null);
}

/**
 * Between a frame and the one before, s: what is before it is decoded and dropped. Nearer to the frame, because ffmpeg
 * rounds to whole ticks, and frames may be a single one apart.
 */
function seekTime({ timeline, startTime }: Film, index: number): string {
  const { ticks, ticksPerSecond } = timeline;
  const between = 0.75 * (ticks[index] as number) + 0.25 * (ticks[index - 1] as number);
  return (between / ticksPerSecond - startTime).toFixed(6);
}

/** Third column of a `framecrc` listing, ticks. */
function presentationTimes(listing: string): number[] {
  return listing
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => Number(line.split(',')[2]));
}
