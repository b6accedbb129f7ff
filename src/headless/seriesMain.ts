/** `npm run series`. */
import { readdir, readFile, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { failure, type Outcome } from '../core/reason';
import { validateResult } from '../shot/parseResult';
import { readSeriesArguments, SERIES_USAGE, type SeriesOrder } from './arguments';
import { EXIT, report, runCommand } from './command';
import { RESULT_ENDING, writeWhole } from './resultFiles';
import { type SeriesPart, seriesOf, seriesPart, seriesText } from './series';
import { seriesNotes } from './seriesNotes';
import { whyUnread } from './shotFiles';

/** Of a folder its result files, by name as characters are numbered, whatever the language of the machine. */
async function filesIn(path: string): Promise<string[]> {
  if (!(await stat(path)).isDirectory()) return [path];
  const names = (await readdir(path)).filter((name) => name.endsWith(RESULT_ENDING)).sort();
  return names.map((name) => join(path, name));
}

async function readPart(file: string): Promise<Outcome<SeriesPart>> {
  try {
    const result = validateResult(JSON.parse(await readFile(file, 'utf8')));
    return result.ok ? seriesPart(result.value) : result;
  } catch (error) {
    return failure('resultNotRead', `The result cannot be read: ${whyUnread(error)}.`);
  }
}

async function series({ results, out }: SeriesOrder): Promise<number> {
  let exit: number = EXIT.done;
  const problem: typeof report = (where, reason) => {
    report(where, reason);
    exit = EXIT.badInput;
  };
  const files = new Set<string>();
  for (const path of results) {
    try {
      for (const file of await filesIn(path)) files.add(resolve(file));
    } catch (error) {
      problem(path, { message: `The result cannot be read: ${whyUnread(error)}.` });
    }
  }
  const parts: SeriesPart[] = [];
  /** Files by what their results were made from: one shot must not pass for two. */
  const known = new Map<string, string>();
  for (const file of files) {
    const part = await readPart(file);
    const twin = part.ok ? known.get(part.value.inputs.sha256) : undefined;
    if (!part.ok) problem(file, part.reason);
    else if (twin !== undefined) {
      problem(file, { message: `It is the result of the same shot as ${twin}, and left out.` });
    } else {
      parts.push(part.value);
      known.set(part.value.inputs.sha256, file);
    }
  }
  for (const note of seriesNotes(parts)) report('series', { message: note });
  const together = seriesOf(parts);
  if (!together.ok) {
    report(out ?? 'series', together.reason);
    return Math.max(exit, EXIT.noAnswer);
  }
  if (out === null) process.stdout.write(seriesText(together.value));
  else await writeWhole(out, seriesText(together.value));
  return exit;
}

await runCommand('series', SERIES_USAGE, readSeriesArguments(process.argv.slice(2)), series);
