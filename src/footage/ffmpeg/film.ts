import { codecName } from '../../core/codecs';
import type { FootageInfo, FrameRange } from '../../core/film';
import type { GreyFrame } from '../../core/frame';
import { ExitframeError } from '../../core/reason';
import { levelsOf, whitesOf } from '../levels';
import { planeSum } from '../planeSum';
import type { DecodePlatform, SpanDecoders } from '../platform';
import { indicesOf, type Span, spansOf, standApart } from '../range';
import { requireFrames } from '../requireFrames';
import { uprightSize } from '../rotate';
import { requireSize } from '../size';
import type { FrameSource } from '../source';
import { playbackRateOf, secondsOf, timelineOf } from '../timeline';
import { codecOf, containerName, whyFfmpeg } from '../wording';
import type { Clip } from './clip';
import { runCoreAgain } from './core';
import { copyIn, decodeSpan, type Film, frameBytes, uprightIn } from './decodeSpan';
import { greyPlan } from './grey';
import { listPackets, type PacketList, type VideoStream } from './probe';
import { decodeSideBySide } from './sideBySide';
import { readSound } from './sound';
import { BYTES_A_SPAN, BYTES_A_SPAN_APART, BYTES_A_SPAN_RAW, messagesHandled } from './spans';

/** How ffmpeg complains of a file that ends too early. */
const CUT_OFF = /partial file|ended prematurely|truncat/i;

/** A film of which sums of the frames can be had without the frames. */
export interface SummedSource extends FrameSource {
  sums(ranges: readonly FrameRange[], signal?: AbortSignal): Promise<Map<number, number>>;
}

/**
 * A film in one file, decoded by ffmpeg in runs of bounded size. Throws `noVideoTrack`,
 * `undecodable`, `truncated`, `singleFrame`, `decoderFailed`.
 */
export async function openFilm(
  clip: Clip,
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<SummedSource> {
  const { file, module, reader, contents } = clip;
  const { name } = file;
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
    run: runCoreAgain(module),
    stream,
    plan,
    timeline: timelineOf(
      packets.map(({ pts, dts, key }, i) => ({ time: (timed ? pts : dts) ?? i, key })),
      stream.ticksPerSecond,
    ),
    startTime: contents.startTime,
    seekable: timed,
  };
  await decodeSpan(film, { first: 0, last: 0, wanted: [0] }, () => 0); // what it cannot decode it says now

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
  const { reader: _, run: __, ...facts } = film;
  const startDecoders = () => platform.startDecoders?.(file, facts) ?? null;
  return {
    info,
    timestamps: async (timesSignal) => {
      timesSignal?.throwIfAborted();
      return untimed ? null : secondsOf(film.timeline);
    },
    frames: (range, framesSignal) => framesOf(film, startDecoders, range, framesSignal),
    sums: (ranges, sumsSignal) => sumsOf(film, ranges, sumsSignal),
    audio: (soundSignal) => readSound(clip, soundSignal),
    close: async () => {},
  };
}

function requireAllPackets(clip: Clip, stream: VideoStream, list: PacketList): void {
  const { format, complaints } = clip.contents;
  const { name } = clip.file;
  // An edit list may leave out frames the index counts; such files are measured by their boxes.
  const stated = format.startsWith('mov,') ? 0 : stream.statedFrames;
  const cut = [...complaints, ...list.complaints].some((line) => CUT_OFF.test(line));
  if (!cut && list.total >= stated) return;
  throw new ExitframeError(
    'truncated',
    list.total < stated
      ? `"${name}" is cut off: ${list.total} of ${stated} frames are there.`
      : `"${name}" is cut off in the middle of a frame.`,
    'Copy the clip from the camera again.',
    {
      values: {
        form: list.total < stated ? 'frames' : 'midFrame',
        ...{ name, there: list.total, stated },
      },
    },
  );
}

async function* framesOf(
  film: Film,
  startDecoders: () => SpanDecoders | null,
  range: FrameRange,
  signal?: AbortSignal,
): AsyncGenerator<GreyFrame> {
  const { stream, plan, timeline } = film;
  const size = uprightSize(stream.width, stream.height, stream.rotation);
  const whites = whitesOf(plan.bitDepth, levelsFor(film));
  const indices = indicesOf(range, timeline.count);
  const spans = (bytes: number) =>
    spansOf(indices, timeline.key, Math.max(1, Math.floor(bytes / frameBytes(film))));
  const isRaw = stream.codec === 'rawvideo';
  const apart = spans(BYTES_A_SPAN_APART);
  const pays = !isRaw && apart.length > 1 && standApart(apart, timeline.key);
  const decoders = pays ? startDecoders() : null;
  const decoded = decoders
    ? decodeSideBySide(apart, decoders, signal)
    : keptOf(film, spans(isRaw ? BYTES_A_SPAN_RAW : BYTES_A_SPAN), copyIn(film), signal);
  for await (const [index, data] of decoded) yield { index, ...size, data, ...whites };
}

/**
 * Sums of frames by index (`planeSum`): nothing else is kept of them, so that all between two places where the decoder
 * can start are decoded in one go, whatever ranges they are of.
 */
async function sumsOf(
  film: Film,
  ranges: readonly FrameRange[],
  signal?: AbortSignal,
): Promise<Map<number, number>> {
  const upright = uprightIn(film);
  const sum = (plane: Uint8Array) => planeSum(upright(plane));
  const sums = new Map<number, number>();
  const { count, key } = film.timeline;
  const indices = new Set(ranges.flatMap((range) => indicesOf(range, count)));
  const inOrder = [...indices].sort((a, b) => a - b);
  const spans = spansOf(inOrder, key, Number.POSITIVE_INFINITY);
  const kept = keptOf(film, spans, sum, signal);
  for await (const [index, of] of kept) sums.set(index, of);
  return sums;
}

/** What is kept of each frame wanted, span by span. */
async function* keptOf<Kept>(
  film: Film,
  spans: readonly Span[],
  keep: (plane: Uint8Array) => Kept,
  signal?: AbortSignal,
): AsyncGenerator<readonly [index: number, Kept]> {
  for (const span of spans) {
    await messagesHandled();
    signal?.throwIfAborted();
    const kept = await decodeSpan(film, span, keep);
    for (const [i, index] of span.wanted.entries()) {
      signal?.throwIfAborted();
      yield [index, kept[i] as Kept];
    }
  }
}

/** Only what is taken as coded can be of limited range. */
const levelsFor = ({ stream, plan }: Film) =>
  levelsOf(plan.bitDepth, stream.isLimited && plan.isCoded);
