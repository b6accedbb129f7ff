import wasmUrl from '@ffmpeg/core/wasm?url';
import { ExitframeError, reasonOf } from '../core/reason';
import { requireWebAssembly } from '../core/webAssembly';
import { freeMemory } from './freeing';
import type { DecodePlatform } from './platform';
import type { SyncReader } from './reader';
import type { FootageFile } from './source';
import { unreadable } from './unreadable';
import { chosenFor } from './wording';

async function compileCore(): Promise<WebAssembly.Module> {
  requireWebAssembly();
  try {
    const response = await fetch(wasmUrl);
    if (!response.ok) throw new Error(`the server answered ${response.status}`);
    // Compiling while loading wants the right media type, which a plain file server may not give.
    return response.headers.get('Content-Type') === 'application/wasm'
      ? await WebAssembly.compileStreaming(response)
      : await WebAssembly.compile(await response.arrayBuffer());
  } catch (error) {
    throw new ExitframeError(
      'decoderMissing',
      `The decoder ffmpeg could not be loaded: ${reasonOf(error).message}.`,
      'Reload the page; if that does not help, the tool was not copied whole.',
      { cause: error, values: { form: 'page', why: reasonOf(error).message } },
    );
  }
}

let core: Promise<WebAssembly.Module> | null = null;

/** Decoding in a worker: WebCodecs where the browser has it, files read by `FileReaderSync`. */
export const browserPlatform: DecodePlatform = {
  webCodecs: typeof VideoDecoder === 'function',
  withoutWebCodecs: chosenFor('without', 'This browser has no WebCodecs.'),
  loadCore() {
    core ??= compileCore().catch((error) => {
      core = null; // so that the next try asks again
      throw error;
    });
    return core;
  },
  async reader({ name, blob }: FootageFile): Promise<SyncReader> {
    const files = new FileReaderSync();
    return {
      size: blob.size,
      read(start, end) {
        try {
          return new Uint8Array(files.readAsArrayBuffer(blob.slice(start, end)));
        } catch (error) {
          throw unreadable(name, error);
        }
      },
      done: (bytes) => freeMemory([bytes]),
    };
  },
};
