/** Writes the service worker that keeps the built files in the browser, with the list of them. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Plugin, transformWithOxc } from 'vite';
import { POLICY } from './policy.ts';

const SOURCE = fileURLToPath(new URL('../workers/service.worker.ts', import.meta.url));
const SERVICE_WORKER = 'service-worker.js';

const sha256 = (data: Buffer | string) => createHash('sha256').update(data).digest('hex');

/** Address of each built file beside the service worker, with its SHA-256; the page itself is ''. */
function filesOf(folder: string): Record<string, string> {
  const paths = readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => path !== join(folder, SERVICE_WORKER))
    .sort();
  return Object.fromEntries(
    paths.map((path) => {
      const address = relative(folder, path).split(sep).join('/');
      return [address === 'index.html' ? '' : address, sha256(readFileSync(path))];
    }),
  );
}

/** Writes the service worker of a build. It differs whenever any of its files does, so browsers notice. */
export async function writeServiceWorker(folder: string): Promise<void> {
  const files = JSON.stringify(filesOf(folder));
  const { code } = await transformWithOxc(readFileSync(SOURCE, 'utf8'), SOURCE, {
    sourcemap: false,
  });
  // The marker of a module in the source would not be understood in a classic worker.
  const body = code.replace(/^export \{\s*\};?$/m, '');
  const head = [
    `const FILES = ${files};`,
    `const VERSION = '${sha256(files + POLICY)}';`,
    `const POLICY = ${JSON.stringify(POLICY)};\n`,
  ].join('\n');
  writeFileSync(join(folder, SERVICE_WORKER), head + body);
}

export function offline(): Plugin {
  let folder = '';
  return {
    name: 'offline',
    apply: 'build',
    configResolved({ root, build }) {
      folder = resolve(root, build.outDir);
    },
    // Everything is written by then, public files and the workers' own builds included.
    writeBundle: { order: 'post', sequential: true, handler: () => writeServiceWorker(folder) },
  };
}
