import { AS_FOUND, type RawLayout, type Reading } from '../../src/core/film';
import { seededRandom } from '../../src/core/random';
import type { FootageFile } from '../../src/footage/source';
import { below, mutate } from './mutate';

export interface Sample {
  readonly name: string;
  /** A film, or a folder of pictures. */
  readonly path: string;
  readonly reading: Reading;
  /** Sums in the file tell any change of its pixels. */
  readonly summed: boolean;
}

const sample = (name: string, path: string, more: Partial<Sample> = {}): Sample => ({
  name,
  path: `test/fixtures/${path}`,
  reading: AS_FOUND,
  summed: false,
  ...more,
});

/** `grey-16-big.raw` of test/fixtures/breadth, as its maker states it. */
const RAW: RawLayout = {
  ...{ width: 48, height: 40, bits: 16, byteOrder: 'big', skip: 32, gap: 6 },
};

export const SAMPLES: readonly Sample[] = [
  sample('MP4, H.264', 'breadth/h264.mp4'),
  sample('MOV, H.264', 'breadth/h264.mov'),
  sample('MP4, H.264 and AAC sound', 'footage/click-aac.mp4'),
  sample('WebM, VP9', 'breadth/vp9.webm'),
  sample('MKV, VP9', 'fuzz/vp9.mkv'),
  sample('AVI, Motion-JPEG', 'breadth/mjpeg.avi'),
  sample('MKV, FFV1 16 bit', 'fuzz/ffv1-16.mkv', { summed: true }),
  sample('AVI, FFV1 16 bit', 'fuzz/ffv1-16.avi', { summed: true }),
  sample('GIF', 'breadth/disc.gif'),
  sample('PNG, 8 bit', 'footage/png8', { summed: true }),
  sample('PNG, 16 bit', 'footage/png16', { summed: true }),
  sample('TIFF, 16 bit', 'footage/tiff16'),
  sample('TIFF, many images', 'footage/pages.tif'),
  sample('BMP', 'footage/bmp'),
  sample('JPEG', 'footage/jpeg'),
  sample('zip of PNG', 'breadth/png-16.zip', { summed: true }),
  sample('raw, 16 bit', 'breadth/grey-16-big.raw', { reading: { ...AS_FOUND, raw: RAW } }),
];

/** The shot file that is damaged, and its film. */
export const SHOT = {
  path: 'test/fixtures/fuzz/flight.shot.json',
  film: 'test/fixtures/fuzz/flight.mkv',
} as const;

interface DamagedFiles {
  readonly files: readonly FootageFile[];
  readonly how: string;
}

/** Mutant `number` of a sample, one of its files changed: the same wherever it is asked for. */
export async function damaged(
  which: Sample,
  whole: readonly FootageFile[],
  seed: number,
  number: number,
): Promise<DamagedFiles> {
  const random = seededRandom(seed, 10_000 * SAMPLES.indexOf(which) + number);
  const place = below(random, whole.length);
  const chosen = whole[place] as FootageFile;
  const { bytes, how } = mutate(new Uint8Array(await chosen.blob.arrayBuffer()), random);
  const files = whole.map((file, i) =>
    i === place ? { name: file.name, blob: new Blob([bytes]) } : file,
  );
  return { files, how: whole.length > 1 ? `${chosen.name}: ${how}` : how };
}
