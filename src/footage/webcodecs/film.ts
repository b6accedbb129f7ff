import { BlobSource, Input, type InputVideoTrack, MATROSKA, MP4, QTFF, WEBM } from 'mediabunny';
import type { AudioTrack, FootageInfo, FrameRange } from '../../core/film';
import type { GreyFrame } from '../../core/frame';
import { ExitframeError } from '../../core/reason';
import { indicesOf } from '../range';
import { requireFrames } from '../requireFrames';
import { turnUpright, uprightSize } from '../rotate';
import type { FootageFile, FrameSource } from '../source';
import { playbackRateOf, secondsOf } from '../timeline';
import { decodeFrames } from './decode';
import { PacketFeed } from './feed';
import type { Luma } from './luma';

/** How the browser fared: a source, or what kept it from decoding this file. */
export type Attempt =
  | { readonly source: FrameSource }
  | { readonly container: string | null; readonly codec: string | null };

const CONTAINERS: Readonly<Record<string, string>> = {
  MP4: 'mp4',
  'QuickTime File Format': 'mov',
  Matroska: 'mkv',
  WebM: 'webm',
};

/**
 * A film decoded by the browser itself. The file is read in slices. Gives no source where the
 * container or the codec is not one the browser reads; throws `noVideoTrack`, `singleFrame`.
 */
export async function openFilm(
  file: FootageFile,
  why: (codec: string) => string,
  readSound: (signal?: AbortSignal) => Promise<AudioTrack | null>,
  signal?: AbortSignal,
): Promise<Attempt> {
  const input = new Input({
    formats: [MP4, QTFF, MATROSKA, WEBM],
    source: new BlobSource(file.blob),
  });
  let kept = false;
  try {
    if (!(await input.canRead())) return { container: null, codec: null };
    const format = (await input.getFormat()).name;
    const container = CONTAINERS[format] ?? format.toLowerCase();
    const [track] = await input.getVideoTracks();
    if (track === undefined) return { container, codec: null };
    const codec = await track.getCodec();
    const config = await decodableConfig(track);
    if (codec === null || config === null) {
      return { container, codec: codec ?? String(await track.getInternalCodecId()) };
    }
    const feed = await PacketFeed.of(track, signal);
    requireFrames(file.name, feed.timeline.count);
    const first = await tryFirstFrame(config, feed, signal);
    if (first === null) return { container, codec };

    const rotation = await track.getRotation();
    const aspect = await track.getPixelAspectRatio();
    const pixelAspect = aspect.num / aspect.den;
    const turned = rotation === 90 || rotation === 270;
    const info: FootageInfo = {
      name: file.name,
      container,
      codec,
      ...uprightSize(first.width, first.height, rotation),
      frameCount: feed.timeline.count,
      playbackRate: playbackRateOf(feed.timeline),
      rotation,
      bitDepth: first.bitDepth,
      pixelAspect: turned ? 1 / pixelAspect : pixelAspect,
      hasAudio: (await input.getPrimaryAudioTrack()) !== null,
      decoder: { name: 'WebCodecs', why: why(codec) },
    };
    kept = true;
    return {
      source: {
        info,
        timestamps: async (timesSignal) => {
          timesSignal?.throwIfAborted();
          return secondsOf(feed.timeline);
        },
        frames: (range, framesSignal) => framesOf(config, feed, info, range, framesSignal),
        audio: readSound,
        close: async () => input.dispose(),
      },
    };
  } finally {
    if (!kept) input.dispose();
  }
}

async function* framesOf(
  config: VideoDecoderConfig,
  feed: PacketFeed,
  info: FootageInfo,
  range: FrameRange,
  signal?: AbortSignal,
): AsyncGenerator<GreyFrame> {
  const { width, height, bitDepth, rotation } = info;
  const wanted = indicesOf(range, info.frameCount);
  for await (const { index, ...luma } of decodeFrames(config, feed, wanted, signal)) {
    const size = uprightSize(luma.width, luma.height, rotation);
    if (size.width !== width || size.height !== height) {
      throw new ExitframeError(
        'decoderFailed',
        `Frame ${index} has another size than the first one (${width} x ${height}).`,
        'Cut the clip where its size changes.',
      );
    }
    const data = turnUpright(luma.data, luma.width, luma.height, rotation);
    yield { index, width, height, data, white: 2 ** bitDepth - 1 };
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
    for await (const luma of decodeFrames(config, feed, [0], signal)) return luma;
  } catch (error) {
    if (signal?.aborted) throw error;
  }
  return null;
}
