import { BlobSource, Input, type InputVideoTrack, MATROSKA, MP4, QTFF, WEBM } from 'mediabunny';
import type { FieldOrder, FootageInfo, FrameRange } from '../../core/film';
import type { GreyFrame } from '../../core/frame';
import { ExitframeError } from '../../core/reason';
import type { Clip } from '../ffmpeg/clip';
import { readSound } from '../ffmpeg/sound';
import { GivenFrames, type SecondReading } from '../givenFrames';
import { levelsOf, whitesOf } from '../levels';
import { indicesOf } from '../range';
import { requireFrames } from '../requireFrames';
import { turnUpright, uprightSize } from '../rotate';
import type { FootageFile, FrameSource } from '../source';
import { type SpareMemory, spareMemory } from '../spareMemory';
import { playbackRateOf, secondsOf } from '../timeline';
import { whyBrowser } from '../wording';
import { avcSettings } from './avcSettings';
import { decodeFrames } from './decode';
import { PacketFeed } from './feed';
import type { Luma } from './luma';

const CONTAINERS: Readonly<Record<string, string>> = {
  MP4: 'mp4',
  'QuickTime File Format': 'mov',
  Matroska: 'mkv',
  WebM: 'webm',
};

/** Codecs that know no fields, and whose every key frame states its range. */
const ON_THEIR_OWN: readonly string[] = ['vp8', 'vp9', 'av1'];

/**
 * Codecs whose decoders in browsers patch up some damage without a word: seen of H.264; HEVC is coded alike, and mostly
 * decoded by the graphics card, which tells nothing either.
 */
const PATCHED_UP: readonly string[] = ['avc', 'hevc'];

/** What of a film is left to ffmpeg. */
interface Helpers {
  /** The same file, for what the browser does not tell exactly. */
  readonly underFfmpeg: () => Promise<Clip>;
  /** Frames read a second time. */
  readonly secondly: (
    ranges: readonly FrameRange[],
    signal?: AbortSignal,
  ) => Promise<SecondReading>;
}

/**
 * A film decoded by the browser itself, read in slices. Null where the container or the codec is
 * not one this browser reads. Throws `singleFrame`.
 */
export async function openFilm(
  file: FootageFile,
  helpers: Helpers,
  signal?: AbortSignal,
): Promise<FrameSource | null> {
  const input = new Input({
    formats: [MP4, QTFF, MATROSKA, WEBM],
    source: new BlobSource(file.blob),
  });
  let source: FrameSource | null = null;
  try {
    source = await openInput(input, file.name, helpers, signal);
  } catch (error) {
    if (error instanceof ExitframeError || signal?.aborted) throw error;
    // A file the browser's reader stumbles over: ffmpeg may read it, or say what is wrong.
  } finally {
    if (source === null) input.dispose();
  }
  return source;
}

async function openInput(
  input: Input,
  name: string,
  { underFfmpeg, secondly }: Helpers,
  signal?: AbortSignal,
): Promise<FrameSource | null> {
  if (!(await input.canRead())) return null;
  const [track] = await input.getVideoTracks();
  const codec = await track?.getCodec();
  const config = track && (await decodableConfig(track));
  if (!track || !codec || !config) return null;

  const feed = await PacketFeed.of(name, track, signal);
  requireFrames(name, feed.timeline.count);
  const first = await tryFirstFrame(config, feed, signal);
  if (first === null) return null;

  const format = (await input.getFormat()).name;
  const rotation = await track.getRotation();
  const turned = rotation === 90 || rotation === 270;
  const pixelAspect = await pixelAspectOf(track, underFfmpeg);
  const picture = ON_THEIR_OWN.includes(codec)
    ? { fields: null, isLimited: first.isLimited }
    : await pictureOf(codec, config, underFfmpeg);
  const info: FootageInfo = {
    name,
    container: CONTAINERS[format] ?? format.toLowerCase(),
    codec,
    ...uprightSize(first.width, first.height, rotation),
    frameCount: feed.timeline.count,
    playbackRate: playbackRateOf(feed.timeline),
    rotation,
    bitDepth: first.bitDepth,
    pixelAspect: turned ? 1 / pixelAspect : pixelAspect,
    hasAudio: (await input.getAudioTracks()).length > 0,
    interlaced: { stated: picture.fields, separated: null },
    levels: levelsOf(first.bitDepth, picture.isLimited),
    decoder: { name: 'WebCodecs', why: whyBrowser(codec) },
  };
  const given = PATCHED_UP.includes(codec) ? new GivenFrames(info.frameCount) : null;
  const memory = spareMemory();
  const film: Film = { config, feed, info, given, memory };
  return {
    info,
    timestamps: async (timesSignal) => {
      timesSignal?.throwIfAborted();
      return secondsOf(feed.timeline);
    },
    frames: (range, framesSignal) => framesOf(film, range, framesSignal),
    takeBack: memory.give,
    ...(given && {
      check: async (ranges, checkSignal) => given.holdAgainst(await secondly(ranges, checkSignal)),
    }),
    audio: async (soundSignal) => {
      soundSignal?.throwIfAborted();
      return info.hasAudio ? readSound(await underFfmpeg(), soundSignal) : null;
    },
    close: async () => input.dispose(),
  };
}

/** Fields and range, which the container's reader does not tell. */
async function pictureOf(
  codec: string,
  { description }: VideoDecoderConfig,
  underFfmpeg: () => Promise<Clip>,
): Promise<{ readonly fields: FieldOrder | null; readonly isLimited: boolean }> {
  const settings =
    codec === 'avc' && description !== undefined ? avcSettings(bytesOf(description)) : null;
  if (settings !== null && !settings.mayBeInterlaced) {
    return { fields: null, isLimited: settings.isLimited };
  }
  const { video } = (await underFfmpeg()).contents;
  return { fields: video?.fields ?? null, isLimited: video?.isLimited ?? false };
}

const bytesOf = (source: AllowSharedBufferSource): Uint8Array =>
  ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength)
    : new Uint8Array(source);

/** Width over height, as coded. Unless it is 1, the reader rounds it to whole pixels of the frame. */
async function pixelAspectOf(
  track: InputVideoTrack,
  underFfmpeg: () => Promise<Clip>,
): Promise<number> {
  const { num, den } = await track.getPixelAspectRatio();
  if (num === den) return 1;
  return (await underFfmpeg()).contents.video?.pixelAspect ?? num / den;
}

interface Film {
  readonly config: VideoDecoderConfig;
  readonly feed: PacketFeed;
  readonly info: FootageInfo;
  /** Null: its decoder tells of damage. */
  readonly given: GivenFrames | null;
  readonly memory: SpareMemory;
}

async function* framesOf(
  { config, feed, info, given, memory }: Film,
  range: FrameRange,
  signal?: AbortSignal,
): AsyncGenerator<GreyFrame> {
  const { width, height, bitDepth, rotation } = info;
  const wanted = indicesOf(range, info.frameCount);
  const whites = whitesOf(bitDepth, info.levels);
  for await (const { index, ...luma } of decodeFrames(config, feed, wanted, memory, signal)) {
    const size = uprightSize(luma.width, luma.height, rotation);
    if (size.width !== width || size.height !== height) {
      throw new ExitframeError(
        'decoderFailed',
        `Frame ${index} has another size than the first one (${width} x ${height}).`,
        'Cut the clip where its size changes.',
        { values: { form: 'size', frame: index, width, height } },
      );
    }
    const data = turnUpright(luma.data, luma.width, luma.height, rotation);
    given?.note(index, data);
    yield { index, width, height, data, ...whites };
  }
}

/** Decoding in software first: its frames lie in memory with a luma plane that can be copied. */
async function decodableConfig(track: InputVideoTrack): Promise<VideoDecoderConfig | null> {
  const config = await track.getDecoderConfig();
  if (config === null) return null;
  for (const hardwareAcceleration of ['prefer-software', 'no-preference'] as const) {
    const candidate = { ...config, hardwareAcceleration };
    const { supported } = await VideoDecoder.isConfigSupported(candidate);
    if (supported) return candidate;
  }
  return null;
}

/** The first frame; null where the browser cannot decode it after all. */
async function tryFirstFrame(
  config: VideoDecoderConfig,
  feed: PacketFeed,
  signal?: AbortSignal,
): Promise<Luma | null> {
  try {
    for await (const luma of decodeFrames(config, feed, [0], spareMemory(), signal)) return luma;
  } catch (error) {
    if (signal?.aborted) throw error;
  }
  return null;
}
