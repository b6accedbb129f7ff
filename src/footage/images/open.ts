import { ExitframeError } from '../../core/reason';
import { type Images, openSequence } from '../ffmpeg/sequence';
import type { DecodePlatform } from '../platform';
import type { SyncReader } from '../reader';
import { requireFrames } from '../requireFrames';
import type { FootageFile, FrameSource } from '../source';
import { chosenFor } from '../wording';
import { imageFormat, imageHeader } from './header';
import { type TiffPage, tiffPages } from './tiff';
import type { ImageFormat, ImageHeader } from './types';

const WHY = chosenFor(
  'images',
  'Browsers reduce images to 8 bits a colour; ffmpeg keeps them as they are.',
);

/**
 * Image files as one film, in the order given. Throws `notFootage` where one is no image,
 * `mixedSizes` where they are not all alike, `undecodable`.
 */
export async function openImages(
  files: readonly FootageFile[],
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  let first: { file: FootageFile; format: ImageFormat; header: ImageHeader } | null = null;
  for (const file of files) {
    signal?.throwIfAborted();
    const format = await imageFormat(file.blob);
    const header = format && (await imageHeader(file.blob, format));
    if (format === null || header === null) throw noImage(file.name);
    first ??= { file, format, header };
    if (format !== first.format || !alike(header, first.header)) {
      throw mixed([first.file.name, first.format, first.header], [file.name, format, header]);
    }
  }
  if (first === null) throw noImage('nothing');
  const fileAt = (index: number) => files[index] as FootageFile;
  const images: Images = {
    name: first.file.name,
    container: 'image sequence',
    format: first.format,
    header: first.header,
    count: files.length,
    nameOf: (index) => fileAt(index).name,
    read: (index) => platform.reader(fileAt(index)),
  };
  return openSequence(await platform.loadCore(), images, WHY);
}

/**
 * A TIFF file with several images in it. Throws `singleFrame`, `truncated`, `imagesLoop`,
 * `tooManyImages`, `mixedSizes`, `undecodable`.
 */
export async function openTiff(
  file: FootageFile,
  platform: DecodePlatform,
  signal?: AbortSignal,
): Promise<FrameSource> {
  const pages = await readPages(file, signal);
  requireFrames(file.name, pages.length);
  const [first] = pages;
  const nameOf = (index: number) => `${file.name}, image ${index + 1}`;
  const other = pages.findIndex((page) => first !== undefined && !alike(page, first));
  const different = pages[other];
  if (first === undefined || different !== undefined) {
    throw mixed([nameOf(0), 'tiff', first ?? null], [nameOf(other), 'tiff', different ?? null]);
  }
  const reader = await platform.reader(file);
  const images: Images = {
    name: file.name,
    container: 'tiff',
    format: 'tiff',
    header: first,
    count: pages.length,
    nameOf,
    read: async (index) => startingAt(reader, pages[index]?.offset ?? 0),
  };
  return openSequence(await platform.loadCore(), images, WHY);
}

async function readPages(file: FootageFile, signal?: AbortSignal): Promise<TiffPage[]> {
  try {
    return await tiffPages(file, signal);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new ExitframeError(
      'truncated',
      `"${file.name}" is cut off: the list of its images goes on past its end.`,
      'Copy the file again.',
      { cause: error, values: { form: 'list', name: file.name } },
    );
  }
}

/** The same file with another first image: bytes 4 to 7 say where its directory stands. */
function startingAt(reader: SyncReader, directory: number): SyncReader {
  const head = reader.read(0, 8).slice();
  new DataView(head.buffer).setUint32(4, directory, head[0] === 0x49);
  return {
    size: reader.size,
    read(start, end) {
      const bytes = reader.read(start, end);
      if (start >= 8) return bytes;
      const patched = bytes.slice();
      patched.set(head.subarray(start, Math.min(8, end)));
      return patched;
    },
  };
}

const alike = (a: ImageHeader, b: ImageHeader) =>
  a.width === b.width &&
  a.height === b.height &&
  a.bits === b.bits &&
  a.colour === b.colour &&
  a.orientation.mirrored === b.orientation.mirrored &&
  a.orientation.rotation === b.orientation.rotation;

const noImage = (name: string) =>
  new ExitframeError(
    'notFootage',
    `"${name}" is no picture of an image sequence (PNG, TIFF, BMP or JPEG).`,
    'Choose one clip, or pictures only.',
    { values: { form: 'picture', name } },
  );

/** The turn its notes ask for. */
const turned = (header: ImageHeader | null) => {
  const { mirrored = false, rotation = 0 } = header?.orientation ?? {};
  return `${mirrored ? ', mirrored' : ''}${rotation === 0 ? '' : `, turned by ${rotation} degrees`}`;
};

type Described = readonly [name: string, format: ImageFormat, header: ImageHeader | null];
const describe = ([name, format, header]: Described) =>
  `"${name}" is ${format} of ${header?.width} x ${header?.height} with ${header?.bits} bits${turned(header)}`;

const sizes = (which: string, header: ImageHeader | null) => ({
  [`${which}Size`]: `${header?.width} x ${header?.height}`,
  [`${which}Bits`]: `${header?.bits}`,
});

const mixed = (a: Described, b: Described) =>
  new ExitframeError(
    'mixedSizes',
    `The pictures are not alike: ${describe(a)}, ${describe(b)}.`,
    'Leave out the pictures that are not from this film.',
    { values: { one: a[0], other: b[0], ...sizes('one', a[2]), ...sizes('other', b[2]) } },
  );
