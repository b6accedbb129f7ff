import { inBlocks } from '../blocks';
import type { DecodePlatform } from '../platform';
import type { SyncReader } from '../reader';
import type { FootageFile } from '../source';
import { type Contents, probeContents } from './probe';

/** A file ffmpeg can read, and what it found in it. */
export interface Clip {
  readonly file: FootageFile;
  readonly module: WebAssembly.Module;
  readonly reader: SyncReader;
  readonly contents: Contents;
}

/** Throws `notFootage`, `decoderMissing`. */
export async function openClip(file: FootageFile, platform: DecodePlatform): Promise<Clip> {
  const [module, reader] = await Promise.all([platform.loadCore(), platform.reader(file)]);
  const blocks = inBlocks(reader);
  const contents = await probeContents(module, file.name, blocks);
  return { file, module, reader: blocks, contents };
}
