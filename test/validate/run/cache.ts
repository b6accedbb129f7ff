import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';

/** Hash of all files in these folders of `root`, names and contents, and of the locked packages. */
export function hashOf(root: string, folders: readonly string[]): string {
  const hash = createHash('sha256');
  for (const path of [...folders, 'package-lock.json'].flatMap((name) => filesIn(root, name))) {
    hash
      .update(path)
      .update('\0')
      .update(readFileSync(join(root, path)))
      .update('\0');
  }
  return hash.digest('hex').slice(0, 16);
}

function filesIn(root: string, path: string): string[] {
  const full = join(root, path);
  if (!existsSync(full)) return [];
  if (!statSync(full).isDirectory()) return [path];
  return readdirSync(full)
    .sort()
    .flatMap((name) => filesIn(root, join(path, name)));
}

/** Records of finished chunks on disk. */
export interface Cache {
  read(name: string, chunk: number): unknown;
  write(name: string, chunk: number, record: unknown): void;
}

/** A cache in `folder` for a seed; `hashes`: of what each class depends on. */
export function openCache(
  folder: string,
  seed: number,
  hashes: Readonly<Record<string, string>>,
): Cache {
  mkdirSync(folder, { recursive: true });
  for (const file of readdirSync(folder)) {
    const hash = hashes[file.slice(0, file.indexOf('-'))];
    // Made from other sources: never to be used again.
    if (hash !== undefined && !file.endsWith(`-${hash}.json`)) rmSync(join(folder, file));
  }
  const path = (name: string, chunk: number) =>
    join(folder, `${name}-${chunk}-${seed}-${hashes[name] ?? 'unknown'}.json`);
  return {
    /** Undefined: not there. */
    read(name, chunk) {
      const file = path(name, chunk);
      return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
    },
    write(name, chunk, record) {
      const file = path(name, chunk);
      // Renamed into place: a broken-off write leaves no half record.
      writeFileSync(`${file}.part`, JSON.stringify(record));
      renameSync(`${file}.part`, file);
    },
  };
}
