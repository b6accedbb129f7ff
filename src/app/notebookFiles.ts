import { ExitframeError, type Reason, reasonOf } from '../core/reason';
import { type NotebookEntry, validateNotebook } from '../shot/notebook';
import { fromCsv } from './notebookCsv';

/** A file that could not be taken, or not in full. */
export interface NotebookProblem {
  readonly path: string;
  readonly reason: Reason;
}

export interface NotebookTexts {
  readonly entries: readonly NotebookEntry[];
  /** Of the first notebook that has one; null: none has. */
  readonly name: string | null;
  readonly problems: readonly NotebookProblem[];
}

const SHOT_OR_RESULT = /\.(shot|result)\.json$/i;
const NOTEBOOK = /\.notebook\.json$/i;
const CSV = /\.csv$/i;

/** Files for the notebook by what they are: whole notebooks and tables, shots and results, and footage. */
export function sortFiles(files: readonly File[]) {
  const isText = ({ name }: File) => NOTEBOOK.test(name) || CSV.test(name);
  const isShot = ({ name }: File) => SHOT_OR_RESULT.test(name);
  return {
    texts: files.filter(isText),
    shots: files.filter(isShot),
    footage: files.filter((file) => !isText(file) && !isShot(file)),
  };
}

/** Reads whole notebooks and tables; what cannot be read is told of. */
export async function readTexts(files: readonly File[]): Promise<NotebookTexts> {
  const entries: NotebookEntry[] = [];
  const problems: NotebookProblem[] = [];
  let name: string | null = null;
  for (const file of files) {
    try {
      const text = await file.text();
      if (CSV.test(file.name)) {
        const { entries: some, unknown } = fromCsv(text);
        entries.push(...some);
        if (unknown.length > 0) problems.push({ path: file.name, reason: notTaken(unknown) });
        continue;
      }
      const notebook = validateNotebook(jsonOf(text));
      if (notebook.ok) {
        entries.push(...notebook.value.entries);
        name ??= notebook.value.name;
      } else problems.push({ path: file.name, reason: notebook.reason });
    } catch (error) {
      problems.push({ path: file.name, reason: reasonOf(error) });
    }
  }
  return { entries, name, problems };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : 'not JSON';
    throw new ExitframeError(
      'notJson',
      `The file cannot be read: ${why}.`,
      'Choose a file whose name ends in .notebook.json.',
      { values: { form: 'notebook', why } },
    );
  }
}

const notTaken = (unknown: readonly string[]): Reason => ({
  code: 'csvColumnsUnknown',
  message: `Columns of other names were not taken over: ${unknown.join(', ')}.`,
  remedy: 'Save a table from here to see the names that are known.',
  values: { columns: unknown.join(', ') },
});
