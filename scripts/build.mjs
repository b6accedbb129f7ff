/** Builds `dist` when the sources have changed since it was built. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { root, run } from './setup.mjs';

const SOURCES = [
  'index.html',
  'package-lock.json',
  'package.json',
  'public',
  'sample-clips',
  'scripts/noEval.ts',
  'scripts/offline.ts',
  'scripts/policy.ts',
  'src',
  'vite.config.ts',
  'workers',
];
/** Kept inside `dist`, which every build empties: it cannot outlive what it describes. */
const STAMP = join(root, 'dist', '.sources-sha256');

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}

/** SHA-256 over the names and contents of everything the build may read. */
function sourcesHash() {
  const hash = createHash('sha256');
  for (const path of SOURCES.flatMap((source) => filesUnder(join(root, source)))) {
    const content = readFileSync(path);
    hash.update(`${relative(root, path)}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}

/** True where `dist` is up to date or was built; false where the build failed. */
export function buildIfChanged() {
  const hash = sourcesHash();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === hash) {
    console.log('The build in dist is up to date.');
    return true;
  }
  const built = run(process.execPath, [join(root, 'node_modules/vite/bin/vite.js'), 'build']);
  if (built) writeFileSync(STAMP, hash);
  return built;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = buildIfChanged() ? 0 : 1;
