import { AS_FOUND, type FrameRange, type Reading } from '../core/film';
import { ExitframeError } from '../core/reason';
import { type Clip, openClip } from './ffmpeg/clip';
import { openFilm as openWithFfmpeg } from './ffmpeg/film';
import { readAgain } from './ffmpeg/secondReading';
import { inFields } from './fields';
import { imageFormat } from './images/header';
import { openImages, openTiff } from './images/open';
import type { DecodePlatform } from './platform';
import { openRaw } from './raw';
import { requireFrames } from './requireFrames';
import type { FootageFile, FrameSource } from './source';
import { openFilm as openInBrowser } from './webcodecs/film';
import { requireWhole } from './wholeness';
import { isZip, unpacked } from './zip';

/** How to open footage. */
export interface Opening {
  /** What is stated about it; left out: it is read as it says itself. */
  readonly reading?: Reading;
  readonly signal?: AbortSignal | undefined;
}

/**
 * Opens footage: one file is a film, several are an image sequence in the order given, an archive
 * is what it holds.
 *
 * Throws `ExitframeError`: `notFootage`, `emptyFile`, `noVideoTrack`, `truncated`, `singleFrame`,
 * `undecodable`, `brokenParts`, `brokenIndex`, `mixedSizes`, `imagesLoop`, `tooManyImages`, `tooManyParts`, `impossibleSize`, `rawMisfit`, `badArchive`, `nestedArchive`, `archiveTooLarge`,
 * `emptyArchive`, `decoderFailed`, `decoderMissing`, `webAssemblyRefused`, `outOfMemory`, `unreadable`; `AbortError` when cancelled. The
 * source's own methods throw `badRange`, `truncated`, `decoderFailed`, `outOfMemory`, `soundUndecodable`,
 * `rawBeyondBits`, `unreadable`.
 */
export async function openFootage(
  files: readonly FootageFile[],
  platform: DecodePlatform,
  { reading = AS_FOUND, signal }: Opening = {},
): Promise<FrameSource> {
  signal?.throwIfAborted();
  const [file] = files;
  if (file === undefined) {
    throw new ExitframeError('notFootage', 'No file was given.', 'Choose a clip.', {
      values: { form: 'none' },
    });
  }
  const empty = files.find(({ blob }) => blob.size === 0);
  if (empty !== undefined) {
    throw new ExitframeError(
      'emptyFile',
      `"${empty.name}" is empty (zero bytes).`,
      'Copy it from the camera again.',
      { values: { name: empty.name } },
    );
  }
  if (reading.raw !== null && files.length === 1) {
    return inFields(openRaw(file, reading.raw), reading.fields);
  }
  return inFields(await openFiles(files, platform, signal), reading.fields);
}

async function openFiles(
  files: readonly FootageFile[],
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  const [file] = files as [FootageFile];
  if (files.length > 1) return openImages(files, platform, signal);
  if (await isZip(file.blob)) return openArchive(file, platform, signal);
  const image = await imageFormat(file.blob);
  if (image === 'tiff') return openTiff(file, platform, signal);
  if (image !== null) requireFrames(file.name, 1);
  await requireWhole(file);
  return openClipFile(file, platform, signal);
}

/** An archive holds a film as a folder does: the archive's name is the film's. */
async function openArchive(
  file: FootageFile,
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  const inside = await unpacked(file, signal);
  const [first] = inside as [FootageFile];
  if (inside.length === 1 && (await isZip(first.blob))) {
    throw new ExitframeError(
      'nestedArchive',
      `"${file.name}" holds another archive.`,
      'Unpack it once, and open what is in it.',
      { values: { name: file.name } },
    );
  }
  const source = await openFiles(inside, platform, signal);
  const container = inside.length > 1 ? 'zip of images' : `${source.info.container} in zip`;
  return { ...source, info: { ...source.info, name: file.name, container } };
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
    const secondly = async (ranges: readonly FrameRange[], checkSignal?: AbortSignal) =>
      platform.readAgain
        ? platform.readAgain(file, ranges, checkSignal)
        : readAgain(await underFfmpeg(), platform, ranges, checkSignal);
    const source = await openInBrowser(file, { underFfmpeg, secondly }, signal);
    if (source !== null) return source;
  }
  signal?.throwIfAborted();
  return openWithFfmpeg(await underFfmpeg(), platform, signal);
}
