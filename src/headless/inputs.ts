import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { SetupScene } from '../reduction/setupScene';
import type { ResultInputs } from '../shot/result';
import type { Shot } from '../shot/schema';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Folders of `src` that no result depends on. */
const OF_THE_PAGE = /^(app|plots|protocol|report|text|ui)[/\\]/;

/**
 * SHA-256 of the sources and locked packages that make results. The version alone would not tell a copy of the
 * program that was brought up to date between two releases.
 */
export async function programSha256(root: string = ROOT): Promise<string> {
  const sources = (await readdir(join(root, 'src'), { recursive: true }))
    .filter((path) => path.endsWith('.ts') && !OF_THE_PAGE.test(path))
    .sort();
  const hash = createHash('sha256');
  for (const path of [...sources.map((source) => join('src', source)), 'package-lock.json']) {
    hash.update(`${path}\n`).update(await readFile(join(root, path)));
  }
  return hash.digest('hex');
}

/** What a result is made from. `program`: its SHA-256. */
export function inputsOf(
  program: string,
  shot: Shot,
  footageSha256: string,
  setupScene: SetupScene | null,
): ResultInputs {
  // A shot that was read has its keys in the schema's order, whichever they had in the file.
  const all = JSON.stringify([program, shot, footageSha256, setupScene]);
  return {
    sha256: createHash('sha256').update(all).digest('hex'),
    shot,
    heldAgainst: setupScene?.shotName ?? null,
  };
}
