import { type Remote, wrap } from 'comlink';
import type { FootageFile } from '../../../src/footage/source';
import type { DecodeApi } from './decode.worker';

/** What a native decoder made of footage; the recipe is in the file. */
export interface Reference {
  readonly timestamps: readonly number[] | null;
  readonly hashes: readonly string[];
}

const urls: Readonly<Record<string, string>> = import.meta.glob(
  [
    '../../fixtures/**/*.{mp4,m4v,mov,mkv,webm,avi,nut,gif,tif,png,bmp,jpg,zip,raw,json}',
    '../../../sample-clips/*/*',
  ],
  { query: '?url', import: 'default', eager: true },
);

/** Paths from the project's root, in the order of their names. */
export const pathsIn = (folder: string): string[] =>
  Object.keys(urls)
    .map((path) => path.replace(/^(\.\.\/)+/, '').replace(/^fixtures/, 'test/fixtures'))
    .filter((path) => path.startsWith(`${folder}/`))
    .sort(new Intl.Collator('en', { numeric: true }).compare);

async function load(path: string): Promise<Response> {
  const key = path.startsWith('test/') ? path.replace('test/', '../../') : `../../../${path}`;
  const url = urls[key];
  if (url === undefined) throw new Error(`no such file in the tests: ${path}`);
  return fetch(url);
}

export const json = async <T>(path: string): Promise<T> => (await load(path)).json();

/** A film, or the images of a folder. */
export async function filesAt(path: string): Promise<FootageFile[]> {
  const isFile = /\.\w+$/.test(path);
  const paths = isFile ? [path] : pathsIn(path).filter((name) => /\.(png|tif|bmp|jpg)$/.test(name));
  return Promise.all(
    paths.map(async (one) => ({
      name: one.slice(one.lastIndexOf('/') + 1),
      blob: await (await load(one)).blob(),
    })),
  );
}

export function startDecoder(): { api: Remote<DecodeApi>; stop(): void } {
  const worker = new Worker(new URL('./decode.worker.ts', import.meta.url), { type: 'module' });
  return { api: wrap<DecodeApi>(worker), stop: () => worker.terminate() };
}
