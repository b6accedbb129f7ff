import type { FootageInfo, FrameRange } from '../../core/film';
import type { GreyFrame } from '../../core/frame';
import { ExitframeError, type Reason } from '../../core/reason';
import type { ImageFormat, ImageHeader } from '../images/types';
import { levelsOf } from '../levels';
import { indicesOf, spansOf } from '../range';
import type { SyncReader } from '../reader';
import { mirrored, turnUpright, uprightSize } from '../rotate';
import { requireSize } from '../size';
import type { FrameSource } from '../source';
import { runCore } from './core';
import { DamageWatch, WITH_SUMS } from './damage';
import { decodingFailed } from './failures';
import { FrameCutter, samplesOf } from './frames';
import { type GreyPlan, greyPlan } from './grey';
import { probeContents } from './probe';
import { BYTES_A_SPAN, messagesHandled } from './spans';

/** Images of one format and size. */
export interface Images {
  /** Of the film as a whole. */
  readonly name: string;
  readonly container: string;
  readonly format: ImageFormat;
  readonly header: ImageHeader;
  readonly count: number;
  readonly nameOf: (index: number) => string;
  readonly read: (index: number) => Promise<SyncReader>;
}

const EXTENSIONS: Readonly<Record<ImageFormat, string>> = {
  png: 'png',
  bmp: 'bmp',
  tiff: 'tif',
  jpeg: 'jpg',
};

/** ffmpeg's names. */
const DECODERS: Readonly<Record<ImageFormat, string>> = {
  png: 'png',
  bmp: 'bmp',
  tiff: 'tiff',
  jpeg: 'mjpeg',
};

/** Images as the frames of a film, without times of their own. Throws `undecodable`, `impossibleSize`. */
export async function openSequence(
  module: WebAssembly.Module,
  images: Images,
  why: Reason,
): Promise<FrameSource> {
  const { header, format } = images;
  const { video } = await probeContents(module, images.nameOf(0), await images.read(0));
  const plan = greyPlan(video?.pixelFormat ?? 'unknown');
  if (video === null || plan === null) {
    const pixels = video?.pixelFormat ?? 'no picture';
    throw new ExitframeError(
      'undecodable',
      `No decoder here reads "${images.nameOf(0)}" (${format}, ${pixels}).`,
      'Save the pictures as PNG, 8 or 16 bits.',
      { values: { form: 'picture', name: images.nameOf(0), format, pixels } },
    );
  }
  requireSize(images.nameOf(0), header.width, header.height, plan.bytesPerSample);
  const { rotation, mirrored: isMirrored } = header.orientation;
  const info: FootageInfo = {
    name: images.name,
    container: images.container,
    codec: format,
    ...uprightSize(header.width, header.height, rotation),
    frameCount: images.count,
    playbackRate: null,
    rotation,
    ...(isMirrored && { mirrored: true }),
    bitDepth: plan.bitDepth,
    pixelAspect: rotation === 90 || rotation === 270 ? 1 / video.pixelAspect : video.pixelAspect,
    hasAudio: false,
    interlaced: { stated: null, separated: null },
    levels: levelsOf(plan.bitDepth, false),
    decoder: { name: 'ffmpeg', why },
  };
  return {
    info,
    timestamps: async () => null,
    frames: (range, signal) => framesOf(module, images, plan, range, signal),
    audio: async () => null,
    close: async () => {},
  };
}

async function* framesOf(
  module: WebAssembly.Module,
  images: Images,
  plan: GreyPlan,
  range: FrameRange,
  signal?: AbortSignal,
): AsyncGenerator<GreyFrame> {
  const { width, height, orientation } = images.header;
  const size = uprightSize(width, height, orientation.rotation);
  const frameBytes = width * height * plan.bytesPerSample;
  const longest = Math.max(1, Math.floor(BYTES_A_SPAN / frameBytes));
  // Only the images asked for are read: to the decoder they are all there is.
  const wanted = indicesOf(range, images.count);
  const places = wanted.map((_, place) => place);
  for (const span of spansOf(places, new Uint8Array(places.length), longest)) {
    await messagesHandled();
    signal?.throwIfAborted();
    const indices = wanted.slice(span.first, span.last + 1);
    const planes = await decodeImages(module, images, plan, frameBytes, indices);
    for (const [i, index] of indices.entries()) {
      signal?.throwIfAborted();
      const coded = samplesOf(planes[i] as Uint8Array, plan.bytesPerSample);
      const turned = orientation.mirrored ? mirrored(coded, width) : coded;
      const data = turnUpright(turned, width, height, orientation.rotation);
      yield { index, ...size, data, white: 2 ** plan.bitDepth - 1 };
    }
  }
}

async function decodeImages(
  module: WebAssembly.Module,
  images: Images,
  plan: GreyPlan,
  frameBytes: number,
  indices: readonly number[],
): Promise<(Uint8Array | null)[]> {
  const extension = EXTENSIONS[images.format];
  const inputs: Record<string, SyncReader> = {};
  for (const [place, index] of indices.entries()) {
    inputs[`${place}.${extension}`] = await images.read(index);
  }
  const cutter = new FrameCutter(
    frameBytes,
    () => true,
    (bytes) => bytes.slice(),
  );
  const watch = new DamageWatch(DECODERS[images.format], () => cutter.frames.length);
  const outcome = await runCore(module, {
    program: 'ffmpeg',
    args: ['-v', 'error', '-xerror', '-noautorotate', ...WITH_SUMS].concat(
      [
        '-f',
        'image2',
        '-start_number',
        '0',
        '-i',
        `/in/%d.${extension}`,
        '-vf',
        plan.filter,
        '-autoscale',
        '0',
      ],
      ['-fps_mode', 'passthrough', '-f', 'rawvideo'],
      ['-flush_packets', '1', '/out/grey'],
    ),
    inputs,
    outputs: { grey: (bytes) => cutter.take(bytes) },
    hear: (line) => watch.hear(line),
  });
  const wentWell = outcome.exitCode === 0;
  const complaint = wentWell ? watch.complaint : null; // else the last line says why it stopped
  const complete = cutter.frames.length === indices.length;
  if (wentWell && complaint === null && complete) return cutter.frames;
  const reached = indices[complaint?.after ?? cutter.frames.length] ?? 0;
  const name = images.nameOf(reached);
  const where = { said: `"${name}"`, values: { at: 'file', name } };
  throw decodingFailed(where, outcome, complaint?.said ?? null);
}
