import { readFile, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { ExitframeError, orThrow, reasonOf } from '../core/reason';
import { sha256 } from '../footage/hash';
import { footageFile } from '../footage/node';
import type { FootageFile } from '../footage/source';
import { parseShot } from '../shot/parse';
import type { Shot } from '../shot/schema';

/** Throws `ExitframeError`: `shotNotFound` and the shot file's own reasons (`parseShot`). */
export async function readShot(path: string): Promise<Shot> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    throw missing('shotNotFound', `The shot file cannot be read: ${whyUnread(error)}.`);
  }
  return orThrow(parseShot(text));
}

export const whyUnread = (error: unknown): string =>
  error instanceof Error && 'code' in error && error.code === 'ENOENT'
    ? 'there is no such file'
    : reasonOf(error).message;

const missing = (code: string, message: string) =>
  new ExitframeError(code, message, 'Check the path; footage is looked for beside the shot file.');

/** A shot's footage on disk, in order, and the SHA-256 of all of it. */
export interface ShotFootage {
  readonly files: readonly FootageFile[];
  readonly sha256: string;
}

/**
 * The footage of a shot file; paths are relative to it. Throws `ExitframeError`: `footageNotFound`, `unreadable`,
 * `footageMismatch`.
 */
export async function findFootage({ footage }: Shot, shotPath: string): Promise<ShotFootage> {
  const paths = 'paths' in footage ? footage.paths : [footage.path];
  const files = await Promise.all(paths.map((path) => openFile(path, dirname(shotPath))));
  const found = await sha256(files);
  const expected = footage.sha256;
  if (expected !== null && expected.toLowerCase() !== found) {
    throw new ExitframeError(
      'footageMismatch',
      `The footage is not the one this shot file was made with: its SHA-256 is ${found}, the shot file says ${expected}.`,
      'Put the original footage back, or open this footage in the tool and save the shot anew.',
    );
  }
  return { files, sha256: found };
}

async function openFile(path: string, folder: string): Promise<FootageFile> {
  try {
    const file = resolve(folder, path);
    if (!(await stat(file)).isFile()) throw new Error('it is not a file');
    return await footageFile(file);
  } catch (error) {
    throw missing('footageNotFound', `The footage "${path}" cannot be read: ${whyUnread(error)}.`);
  }
}
