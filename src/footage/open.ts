import { ExitframeError } from '../core/reason';
import { inBlocks } from './blocks';
import { openFilm } from './ffmpeg/film';
import { probeContents } from './ffmpeg/probe';
import { readSound } from './ffmpeg/sound';
import { imageFormat } from './images/header';
import { openImages, openTiff } from './images/open';
import type { DecodePlatform } from './platform';
import { requireFrames } from './requireFrames';
import type { FootageFile, FrameSource } from './source';
import { openFilm as openInBrowser } from './webcodecs/film';
import { requireWhole } from './wholeness';
import { codecName, codecOf, containerName, whyFfmpeg } from './wording';

/**
 * Opens footage: one file is a film, several are an image sequence in the order given.
 *
 * Throws `ExitframeError`: `notFootage`, `emptyFile`, `noVideoTrack`, `truncated`, `singleFrame`,
 * `undecodable`, `mixedSizes`, `decoderFailed`, `decoderMissing`; `AbortError` when cancelled.
 */
export async function openFootage(
  files: readonly FootageFile[],
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  signal?.throwIfAborted();
  const [file] = files;
  if (file === undefined) {
    throw new ExitframeError('notFootage', 'No file was given.', 'Choose a clip.');
  }
  const empty = files.find(({ blob }) => blob.size === 0);
  if (empty !== undefined) {
    throw new ExitframeError(
      'emptyFile',
      `"${empty.name}" is empty (zero bytes).`,
      'Copy it from the camera again.',
    );
  }
  if (files.length > 1) return openImages(files, platform, signal);
  const image = await imageFormat(file.blob);
  if (image === 'tiff') return openTiff(file, platform);
  if (image !== null) requireFrames(file.name, 1);
  await requireWhole(file);
  if (!platform.webCodecs) {
    return openWithFfmpeg(file, platform, signal);
  }
  const sound = (soundSignal?: AbortSignal) => soundOf(file, platform, soundSignal);
  const why = (codec: string) => `This browser decodes ${codecName(codec)} itself.`;
  const attempt = await openInBrowser(file, why, sound, signal);
  if ('source' in attempt) return attempt.source;
  return openWithFfmpeg(file, platform, signal);
}

async function soundOf(file: FootageFile, platform: DecodePlatform, signal?: AbortSignal) {
  const [module, plain] = await Promise.all([platform.loadCore(), platform.reader(file)]);
  signal?.throwIfAborted();
  const reader = inBlocks(plain);
  const { video, sound } = await probeContents(module, file.name, reader);
  return video && sound && readSound(module, reader, sound, video, signal);
}

async function openWithFfmpeg(
  file: FootageFile,
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  const { name } = file;
  const [module, plain] = await Promise.all([platform.loadCore(), platform.reader(file)]);
  signal?.throwIfAborted();
  const reader = inBlocks(plain);
  const contents = await probeContents(module, name, reader);
  const { video } = contents;
  if (video === null) {
    throw new ExitframeError(
      'noVideoTrack',
      `"${name}" holds sound only, no film.`,
      'Choose the clip the camera took.',
    );
  }
  const container = containerName(contents.format, name);
  const codec = codecOf(video.codec);
  const why = platform.webCodecs ? whyFfmpeg(container, codec) : platform.withoutWebCodecs;
  const names = { name, container, codec, why };
  return openFilm(module, reader, { ...contents, video }, names, signal);
}
