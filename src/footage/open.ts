import { ExitframeError } from '../core/reason';
import { type Clip, openClip } from './ffmpeg/clip';
import { openFilm as openWithFfmpeg } from './ffmpeg/film';
import { imageFormat } from './images/header';
import { openImages, openTiff } from './images/open';
import type { DecodePlatform } from './platform';
import { requireFrames } from './requireFrames';
import type { FootageFile, FrameSource } from './source';
import { openFilm as openInBrowser } from './webcodecs/film';
import { requireWhole } from './wholeness';

/**
 * Opens footage: one file is a film, several are an image sequence in the order given.
 *
 * Throws `ExitframeError`: `notFootage`, `emptyFile`, `noVideoTrack`, `truncated`, `singleFrame`,
 * `undecodable`, `mixedSizes`, `decoderFailed`, `decoderMissing`, `unreadable`; `AbortError` when
 * cancelled. The source's own methods throw `badRange`, `truncated`, `decoderFailed`,
 * `soundUndecodable`, `unreadable`.
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
  return openClipFile(file, platform, signal);
}

async function openClipFile(
  file: FootageFile,
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  let clip: Promise<Clip> | null = null;
  const underFfmpeg = () => {
    clip ??= openClip(file, platform).catch((error) => {
      clip = null; // so that the next try asks again
      throw error;
    });
    return clip;
  };
  if (platform.webCodecs) {
    const source = await openInBrowser(file, underFfmpeg, signal);
    if (source !== null) return source;
  }
  signal?.throwIfAborted();
  return openWithFfmpeg(await underFfmpeg(), platform, signal);
}
