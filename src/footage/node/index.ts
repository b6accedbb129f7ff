import { closeSync, openAsBlob, openSync, readSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import { ExitframeError, reasonOf } from '../../core/reason';
import type { DecodePlatform } from '../platform';
import type { SyncReader } from '../reader';
import type { FootageFile } from '../source';
import { unreadable } from '../unreadable';
import { chosenFor } from '../wording';

const paths = new WeakMap<Blob, string>();

/** A file on disk, to be read in slices. Throws the file system's error where it cannot be opened. */
export async function footageFile(path: string): Promise<FootageFile> {
  const blob = await openAsBlob(path);
  paths.set(blob, path); // a blob can only be read by waiting; its path can be read at once
  return { name: basename(path), blob };
}

function readAt(path: string, start: number, end: number): Uint8Array {
  const bytes = new Uint8Array(end - start);
  let file: number | null = null;
  try {
    file = openSync(path, 'r');
    for (let at = 0; at < bytes.length; ) {
      const read = readSync(file, bytes, at, bytes.length - at, start + at);
      if (read === 0) throw new Error('it became shorter');
      at += read;
    }
  } catch (error) {
    throw unreadable(path, error);
  } finally {
    if (file !== null) closeSync(file);
  }
  return bytes;
}

async function compileCore(): Promise<WebAssembly.Module> {
  // The core takes itself to be in a worker and asks for its place.
  const globals = globalThis as { self?: unknown; location?: unknown };
  globals.self ??= globalThis;
  globals.location ??= { href: import.meta.url };
  try {
    const wasm = createRequire(import.meta.url).resolve('@ffmpeg/core/wasm');
    return await WebAssembly.compile(await readFile(wasm));
  } catch (error) {
    throw new ExitframeError(
      'decoderMissing',
      `The decoder ffmpeg could not be loaded: ${reasonOf(error).message}.`,
      'Run npm install.',
      { cause: error },
    );
  }
}

let core: Promise<WebAssembly.Module> | null = null;

/** Decoding under Node: everything by ffmpeg. A blob not from `footageFile` is read whole. */
export const nodePlatform: DecodePlatform = {
  webCodecs: false,
  withoutWebCodecs: chosenFor('command', 'The command line has no browser to decode with.'),
  loadCore() {
    core ??= compileCore();
    return core;
  },
  async reader({ blob }: FootageFile): Promise<SyncReader> {
    const path = paths.get(blob);
    const { size } = blob;
    if (path !== undefined) return { size, read: (start, end) => readAt(path, start, end) };
    const bytes = new Uint8Array(await blob.arrayBuffer());
    return { size, read: (start, end) => bytes.subarray(start, end) };
  },
};
