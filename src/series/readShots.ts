import { type Outcome, type Reason, reasonOf } from '../core/reason';
import type { NotebookEntry } from '../shot/notebook';
import { validateShot } from '../shot/parse';
import { validateResult } from '../shot/parseResult';
import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import { entryOf } from './entry';

/** A file's path within what was chosen, and its text. */
export interface TextFile {
  readonly path: string;
  text(): Promise<string>;
}

export interface ShotsRead {
  /** Each with the path of its shot file. */
  readonly entries: readonly { readonly path: string; readonly entry: NotebookEntry }[];
  /** What could not be used, file by file; the others are read all the same. */
  readonly problems: readonly { readonly path: string; readonly reason: Reason }[];
}

const SHOT = /\.shot\.json$/i;
const RESULT = /\.result\.json$/i;

/** Name of a shot's files without folder and ending. */
const stemOf = (path: string): string =>
  path
    .replace(/^.*[/\\]/, '')
    .replace(SHOT, '')
    .replace(RESULT, '');
const folderOf = (path: string): string => path.replace(/[^/\\]*$/, '');

/**
 * Shot and result files paired by their names: `NAME.shot.json` with `NAME.result.json` of its own folder, or with the
 * only one of that name elsewhere. A shot without a result is kept as not reduced. One file at a time is held in
 * memory; `onShare` gets 0..1.
 */
export async function readShots(
  files: readonly TextFile[],
  onShare?: (share: number) => void,
): Promise<ShotsRead> {
  const problems: { path: string; reason: Reason }[] = [];
  const entries = new Map<string, { path: string; entry: NotebookEntry }>();
  const shots = files.filter(({ path }) => SHOT.test(path));
  const results = resultsByStem(files);
  const paired = new Set<TextFile>();
  for (const [i, file] of shots.entries()) {
    const shot = await read(file, validateShot, problems);
    if (shot !== null) {
      const resultFile = resultFor(file, results);
      const result = resultFile && (await read(resultFile, validateResult, problems));
      if (resultFile !== null) paired.add(resultFile);
      const other = result !== null && footageDiffers(shot, result);
      if (other) problems.push({ path: resultFile?.path ?? '', reason: OTHER_FOOTAGE });
      const name = freeName(shot.name || stemOf(file.path), entries);
      entries.set(name, { path: file.path, entry: entryOf(shot, other ? null : result, name) });
    }
    onShare?.((i + 1) / shots.length);
  }
  for (const file of [...results.values()].flat()) {
    if (!paired.has(file)) problems.push({ path: file.path, reason: WITHOUT_SHOT });
  }
  return { entries: [...entries.values()], problems };
}

const WITHOUT_SHOT: Reason = {
  code: 'resultWithoutShot',
  message:
    'No shot file of this name is beside the result, so what it shares with others is not known.',
  remedy: 'Choose both files, NAME.shot.json and NAME.result.json.',
};
const OTHER_FOOTAGE: Reason = {
  code: 'resultOfOtherFootage',
  message:
    'The result is of other footage than the shot of this name; the shot is kept as not reduced.',
  remedy: 'Reduce the shot anew.',
};

function resultsByStem(files: readonly TextFile[]): Map<string, TextFile[]> {
  const results = new Map<string, TextFile[]>();
  for (const file of files) {
    if (!RESULT.test(file.path)) continue;
    const stem = stemOf(file.path);
    results.set(stem, [...(results.get(stem) ?? []), file]);
  }
  return results;
}

function resultFor({ path }: TextFile, results: Map<string, TextFile[]>): TextFile | null {
  const named = results.get(stemOf(path)) ?? [];
  const beside = named.find((one) => folderOf(one.path) === folderOf(path));
  return beside ?? (named.length === 1 ? (named[0] ?? null) : null);
}

async function read<T>(
  file: TextFile,
  validate: (data: unknown) => Outcome<T>,
  problems: { path: string; reason: Reason }[],
): Promise<T | null> {
  try {
    const outcome = validate(JSON.parse(await file.text()));
    if (outcome.ok) return outcome.value;
    problems.push({ path: file.path, reason: outcome.reason });
  } catch (error) {
    const reason =
      error instanceof SyntaxError
        ? {
            code: 'notJson',
            message: `The file cannot be read: ${error.message}.`,
            remedy: 'Write it anew.',
            values: { form: 'written', why: error.message },
          }
        : reasonOf(error);
    problems.push({ path: file.path, reason });
  }
  return null;
}

const footageDiffers = ({ footage }: Shot, { footageSha256 }: Result): boolean =>
  footage.sha256 !== null && footageSha256 !== null && footage.sha256 !== footageSha256;

/** Two shots of one name are told apart by a number. */
function freeName(name: string, taken: ReadonlyMap<string, unknown>): string {
  if (!taken.has(name)) return name;
  let number = 2;
  while (taken.has(`${name} (${number})`)) number++;
  return `${name} (${number})`;
}
