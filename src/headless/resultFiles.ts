import { randomUUID } from 'node:crypto';
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { validateResult } from '../shot/parseResult';

/** `2031-04-17-C.shot.json` -> `2031-04-17-C.result.json` */
export const resultName = (shot: string): string =>
  `${basename(shot).replace(/(\.shot)?\.json$/, '')}${RESULT_ENDING}`;

export const RESULT_ENDING = '.result.json';

/** Writes a file whole or not at all: under another name first, which nobody takes for the file. */
export async function writeWhole(file: string, text: string): Promise<void> {
  const unfinished = `${file}.${randomUUID()}.unfinished`;
  try {
    await writeFile(unfinished, text, { flush: true });
    await rename(unfinished, file);
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
}

/** Text of the result in `file` if it was made from these inputs; null: it has to be made. */
export async function keptResult(file: string, inputsSha256: string): Promise<string | null> {
  try {
    const text = await readFile(file, 'utf8');
    const result = validateResult(JSON.parse(text));
    return result.ok && result.value.inputs?.sha256 === inputsSha256 ? text : null;
  } catch {
    // Missing, cut off or not JSON: made anew.
    return null;
  }
}
