import { expose } from 'comlink';
import { browserPlatform } from '../../../src/footage/browser';
import { openFootage } from '../../../src/footage/open';
import type { FootageFile } from '../../../src/footage/source';

async function hashOf(data: Uint8Array | Uint16Array): Promise<string> {
  const bytes = new Uint8Array(data.buffer as ArrayBuffer, data.byteOffset, data.byteLength);
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest.subarray(0, 8), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

const api = {
  async read(files: FootageFile[], start = 0, end = -1, step = 1) {
    const t0 = performance.now();
    const source = await openFootage(files, browserPlatform);
    const t1 = performance.now();
    const hashes: string[] = [];
    for await (const f of source.frames({
      start,
      end: end < 0 ? source.info.frameCount : end,
      step,
    }))
      hashes.push(await hashOf(f.data));
    return {
      info: source.info,
      hashes,
      timestamps: [...((await source.timestamps()) ?? [])],
      ms: [t1 - t0, performance.now() - t1],
    };
  },
};
export type DecodeApi = typeof api;
expose(api);
