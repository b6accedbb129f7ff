import { codecName } from '../../core/codecs';
import type { FootageInfo, FrameRange } from '../../core/film';
import type { GreyFrame } from '../../core/frame';
import { ExitframeError } from '../../core/reason';
import { levelsOf, whitesOf } from '../levels';
import type { DecodePlatform, SyncReader } from '../platform';
import { indicesOf, type Span, spansOf } from '../range';
import { requireFrames } from '../requireFrames';
import { turnUpright, uprightSize } from '../rotate';
import { requireSize } from '../size';
import type { FrameSource } from '../source';
import { playbackRateOf, secondsOf, type Timeline, timelineOf } from '../timeline';
import { codecOf, containerName, whyFfmpeg } from '../wording';
import type { Clip } from './clip';
import { runCore, textOutput } from './core';
import { DamageWatch, WITH_SUMS } from './damage';
import { decodingFailed } from './failures';
import { FrameCutter, samplesOf } from './frames';
import { type GreyPlan, greyPlan } from './grey';
import { listPackets, type PacketList, type VideoStream } from './probe';
import { readSound } from './sound';
import { BYTES_A_SPAN, messagesHandled } from './spans';

/** How ffmpeg complains of a file that ends too early. */
const CUT_OFF = /partial file|ended prematurely|truncat/i;

interface Film {
  readonly module: WebAssembly.Module;
  readonly reader: SyncReader;
  readonly stream: VideoStream;
  readonly plan: GreyPlan;
  readonly timeline: Timeline;
  /** First time of all the file's streams, s. */
  readonly startTime: number;
  /** False: frames are found by counting from the first one. */
  seekable: boolean;
}

/**
 * A film in one file, decoded by ffmpeg in runs of bounded size. Throws `noVideoTrack`,
 * `undecodable`, `truncated`, `singleFrame`, `decoderFailed`.
 */
export async function openFilm(
  clip: Clip,
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  const { name, module, reader, contents } = clip;
  const { video: stream, sound } = contents;
  if (stream === null) {
    throw new ExitframeError(
      'noVideoTrack',
      `"${name}" holds sound only, no film.`,
      'Choose the clip the camera took.',
      { values: { name } },
    );
  }
  const container = containerName(contents.format, name);
  const codec = codecOf(stream.codec);
  const why = platform.webCodecs ? whyFfmpeg(container, codec) : platform.withoutWebCodecs;
  const plan = greyPlan(stream.pixelFormat);
  if (plan === null) {
    throw new ExitframeError(
      'undecodable',
      `"${name}" is coded as ${codecName(codec)} (pixel format ${stream.pixelFormat}), which no decoder here reads.`,
      'Open it in another browser, or convert it to H.264, ProRes or FFV1.',
      {
        values: { form: 'coded', name, codec: codecName(codec), format: stream.pixelFormat },
      },
    );
  }
  requireSize(name, stream.width, stream.height, plan.bytesPerSample);
  signal?.throwIfAborted();
  const list = await listPackets(module, reader, stream.index);
  requireAllPackets(clip, stream, list);
  const { packets } = list;
  requireFrames(name, packets.length);
  const timed = packets.every(({ pts }) => pts !== null);
  const untimed = packets.some(({ pts, dts }) => pts === null && dts === null);
  const film: Film = {
    module,
    reader,
    stream,
    plan,
    timeline: timelineOf(
      packets.map(({ pts, dts, key }, i) => ({ time: (timed ? pts : dts) ?? i, key })),
      stream.ticksPerSecond,
    ),
    startTime: contents.startTime,
    seekable: timed,
  };
  await decodeSpan(film, { first: 0, last: 0, wanted: [0] }); // what it cannot decode it says now

  const turned = stream.rotation === 90 || stream.rotation === 270;
  const info: FootageInfo = {
    name,
    container,
    codec,
    ...uprightSize(stream.width, stream.height, stream.rotation),
    frameCount: film.timeline.count,
    playbackRate: untimed ? null : playbackRateOf(film.timeline),
    rotation: stream.rotation,
    bitDepth: plan.bitDepth,
    pixelAspect: turned ? 1 / stream.pixelAspect : stream.pixelAspect,
    hasAudio: sound !== null,
    interlaced: { stated: stream.fields, separated: null },
    levels: levelsFor(film),
    decoder: { name: 'ffmpeg', why },
  };
  return {
    info,
    timestamps: async (timesSignal) => {
      timesSignal?.throwIfAborted();
      return untimed ? null : secondsOf(film.timeline);
    },
    frames: (range, framesSignal) => framesOf(film, range, framesSignal),
    audio: (soundSignal) => readSound(clip, soundSignal),
    close: async () => {},
  };
}

function requireAllPackets(clip: Clip, stream: VideoStream, list: PacketList): void {
  const { format, complaints } = clip.contents;
  // An edit list may leave out frames the index counts; such files are measured by their boxes.
  const stated = format.startsWith('mov,') ? 0 : stream.statedFrames;
  const cut = [...complaints, ...list.complaints].some((line) => CUT_OFF.test(line));
  if (!cut && list.total >= stated) return;
  throw new ExitframeError(
    'truncated',
    list.total < stated
      ? `"${clip.name}" is cut off: ${list.total} of ${stated} frames are there.`
      : `"${clip.name}" is cut off in the middle of a frame.`,
    'Copy the clip from the camera again.',
    {
      values: {
        form: list.total < stated ? 'frames' : 'midFrame',
        ...{ name: clip.name, there: list.total, stated },
      },
    },
  );
}

async function* framesOf(
  film: Film,
  range: FrameRange,
  signal?: AbortSignal,
): AsyncGenerator<GreyFrame> {
  const { stream, plan, timeline } = film;
  const longest = Math.max(1, Math.floor(BYTES_A_SPAN / frameBytes(film)));
  const size = uprightSize(stream.width, stream.height, stream.rotation);
  const whites = whitesOf(plan.bitDepth, levelsFor(film));
  for (const span of spansOf(indicesOf(range, timeline.count), timeline.key, longest)) {
    await messagesHandled();
    signal?.throwIfAborted();
    const planes = await decodeSpan(film, span);
    for (const [i, index] of span.wanted.entries()) {
      signal?.throwIfAborted();
      const samples = samplesOf(planes[i] as Uint8Array, plan.bytesPerSample);
      const data = turnUpright(samples, stream.width, stream.height, stream.rotation);
      yield { index, ...size, data, ...whites };
    }
  }
}

/** Only what is taken as coded can be of limited range. */
const levelsFor = ({ stream, plan }: Film) =>
  levelsOf(plan.bitDepth, stream.isLimited && plan.isCoded);

const frameBytes = ({ stream, plan }: Film) => stream.width * stream.height * plan.bytesPerSample;

/** The wanted planes of a span as coded, verified by their timestamps to be the ones asked for. */
async function decodeSpan(film: Film, span: Span): Promise<Uint8Array[]> {
  if (film.seekable) {
    const planes = await tryDecode(film, span, span.first);
    if (planes !== null) return planes;
    film.seekable = false; // the container's own index leads astray
  }
  const planes = await tryDecode(film, span, 0);
  if (planes !== null) return planes;
  throw new ExitframeError(
    'decoderFailed',
    `The decoder gave other frames than ${span.first} to ${span.last}: their times are not the container's.`,
    'Convert the clip to another container, such as MP4, and open that.',
    { values: { form: 'otherFrames', first: span.first, last: span.last } },
  );
}

/** Decodes from frame `start` on; null where what comes there is not what was asked for. */
async function tryDecode(film: Film, span: Span, start: number): Promise<Uint8Array[] | null> {
  const { module, reader, stream, plan, timeline } = film;
  const wanted = new Set(span.wanted);
  const cutter = new FrameCutter(frameBytes(film), (place) => wanted.has(start + place));
  const watch = new DamageWatch(stream.codec, () => cutter.frames.length);
  const times = textOutput();
  const count = span.last - start + 1;
  const output = ['-map', `0:${stream.index}`, '-fps_mode', 'passthrough', '-frames:v', `${count}`];
  const outcome = await runCore(module, {
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
