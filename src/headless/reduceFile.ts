import { readFile, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { soundIfDecodable } from '../core/audio';
import { ExitframeError, orThrow, reasonOf } from '../core/reason';
import { sha256 } from '../footage/hash';
import { footageFile, nodePlatform } from '../footage/node';
import { openFootage } from '../footage/open';
import type { FootageFile } from '../footage/source';
import { createMeasurer } from '../reduction/measurer';
import { reduceShot } from '../reduction/reduceShot';
import type { SetupScene } from '../reduction/setupScene';
import type { Reduction } from '../reduction/types';
import { parseShot } from '../shot/parse';
import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import { setupKey } from '../shot/setup';

async function readShot(path: string): Promise<Shot> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    throw missing('shotNotFound', `The shot file cannot be read: ${whyUnread(error)}.`);
  }
  return orThrow(parseShot(text));
}

const whyUnread = (error: unknown): string =>
  error instanceof Error && 'code' in error && error.code === 'ENOENT'
    ? 'there is no such file'
    : reasonOf(error).message;

const missing = (code: string, message: string) =>
  new ExitframeError(code, message, 'Check the path; footage is looked for beside the shot file.');

/** The shot's footage, in order; paths are relative to the shot file. */
async function openFiles(shot: Shot, shotPath: string): Promise<FootageFile[]> {
  const { footage } = shot;
  const paths = 'paths' in footage ? footage.paths : [footage.path];
  return Promise.all(
    paths.map(async (path) => {
      try {
        const file = resolve(dirname(shotPath), path);
        if (!(await stat(file)).isFile()) throw new Error('it is not a file');
        return await footageFile(file);
      } catch (error) {
        throw missing(
          'footageNotFound',
          `The footage "${path}" cannot be read: ${whyUnread(error)}.`,
        );
      }
    }),
  );
}

export interface Reduced {
  readonly shot: Shot;
  readonly result: Result;
  /** The same with what the page shows beside it. */
  readonly reduction: Reduction;
}

/**
 * Reduces one shot file, whole. `setups` holds the still scene of the first shot of each setup: this one is compared
 * with it, or becomes it. Throws `ExitframeError`: the shot file's own reasons (`parseShot`),
 * `shotNotFound`, `footageNotFound`, `footageMismatch`, and those of opening and decoding footage.
 */
export async function reduceFile(
  path: string,
  setups: Map<string, SetupScene> = new Map(),
): Promise<Reduced> {
  const shot = await readShot(path);
  const setup = setupKey(shot);
  const files = await openFiles(shot, path);
  const footageSha256 = await sha256(files);
  const expected = shot.footage.sha256;
  if (expected !== null && expected.toLowerCase() !== footageSha256) {
    throw new ExitframeError(
      'footageMismatch',
      `The footage is not the one this shot file was made with: its SHA-256 is ${footageSha256}, the shot file says ${expected}.`,
      'Put the original footage back, or open this footage in the tool and save the shot anew.',
    );
  }
  const source = await openFootage(files, nodePlatform, { reading: shot.footage.reading });
  try {
    const inputs = {
      shot,
      info: source.info,
      timestamps: await source.timestamps(),
      footageSha256,
      audio: shot.sound === null ? null : await soundIfDecodable(() => source.audio()),
      setupScene: setup === null ? null : (setups.get(setup) ?? null),
    };
    const ignore = () => {};
    const { signal } = new AbortController();
    const reduction = await reduceShot(inputs, source, createMeasurer(), ignore, signal);
    if (setup !== null && !setups.has(setup)) {
      setups.set(setup, { shotName: shot.name, fingerprint: reduction.fingerprint });
    }
    return { shot, result: reduction.result, reduction };
  } finally {
    await source.close();
  }
}
