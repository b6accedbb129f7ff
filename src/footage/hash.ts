import { createSHA256 } from 'hash-wasm';
import { requireWebAssembly } from '../core/webAssembly';
import { freeMemory } from './freeing';
import type { FootageFile } from './source';
import { unreadable } from './unreadable';

const SLICE = 8 << 20;

/**
 * SHA-256 of the files' bytes one after the other, hexadecimal, read in slices.
 * `onProgress` gets the share done, 0..1. Throws `unreadable`, `webAssemblyRefused`;
 * `AbortError` when cancelled.
 */
export async function sha256(
  files: readonly FootageFile[],
  onProgress?: (share: number) => void,
  signal?: AbortSignal,
): Promise<string> {
  requireWebAssembly();
  const hash = await createSHA256();
  const total = files.reduce((sum, { blob }) => sum + blob.size, 0);
  let done = 0;
  for (const { name, blob } of files) {
    for (let start = 0; start < blob.size; start += SLICE) {
      signal?.throwIfAborted();
      const slice = new Uint8Array(await read(name, blob.slice(start, start + SLICE)));
      hash.update(slice);
      done += slice.byteLength;
      freeMemory([slice]);
      onProgress?.(done / total);
    }
  }
  signal?.throwIfAborted();
  return hash.digest('hex');
}

async function read(name: string, slice: Blob): Promise<ArrayBuffer> {
  try {
    return await slice.arrayBuffer();
  } catch (error) {
    throw unreadable(name, error);
  }
}
