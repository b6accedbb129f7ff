import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { FrameRange } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { footageFile, nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import type { FootageFile, FrameSource } from '../../../src/footage/source';

/** What a native decoder made of footage; the recipe is in the file. */
export interface Reference {
  readonly timestamps: readonly number[] | null;
  /** First 16 hexadecimal digits of the SHA-256 of each frame's grey plane. */
  readonly hashes: readonly string[];
}

const FIXTURES = 'test/fixtures/footage';
const isImage = (name: string) => /\.(png|tif|bmp|jpg)$/.test(name);

export const fixture = (name: string): string => join(FIXTURES, name);

/** References of the small films, by file or folder name; not turned upright unless named so. */
export async function fixtureReferences(): Promise<Record<string, Reference>> {
  return JSON.parse(await readFile(fixture('frames.json'), 'utf8'));
}

/** One film, or the images of a folder in the order of their names. */
export async function filesAt(path: string): Promise<FootageFile[]> {
  if (basename(path).includes('.')) return [await footageFile(path)];
  const images = (await readdir(path)).filter(isImage).sort();
  return Promise.all(images.map((name) => footageFile(join(path, name))));
}

export const open = async (path: string): Promise<FrameSource> =>
  openFootage(await filesAt(path), nodePlatform);

/** A file that lies in memory. */
export const inMemory = (name: string, bytes: Uint8Array | string): FootageFile => ({
  name,
  blob: new Blob([bytes as BlobPart]),
});

export async function framesOf(source: FrameSource, range?: FrameRange): Promise<GreyFrame[]> {
  const frames: GreyFrame[] = [];
  const whole = { start: 0, end: source.info.frameCount };
  for await (const frame of source.frames(range ?? whole)) frames.push(frame);
  return frames;
}

export const hashOf = (data: Uint8Array | Uint16Array): string =>
  createHash('sha256')
    .update(new Uint8Array(data.buffer, data.byteOffset, data.byteLength))
    .digest('hex')
    .slice(0, 16);
