import { inBlocks } from '../blocks';
import type { DecodePlatform, SyncReader } from '../platform';
import type { FootageFile } from '../source';
import { type Contents, probeContents } from './probe';

/** A file ffmpeg can read, and what it found in it. */
export interface Clip {
  readonly name: string;
  readonly module: WebAssembly.Module;
  readonly reader: SyncReader;
  readonly contents: Contents;
}

/** Throws `notFootage`, `decoderMissing`. */
export async function openClip(file: FootageFile, platform: DecodePlatform): Promise<Clip> {
  const [module, reader] = await Promise.all([platform.loadCore(), platform.reader(file)]);
  const blocks = inBlocks(reader);
  const contents = await probeContents(module, file.name, blocks);
  return { name: file.name, module, reader: blocks, contents };
}
