import { type ParseArgsConfig, parseArgs } from 'node:util';
import { failure, type Outcome, success } from '../core/reason';
import { resultName } from './resultFiles';

export const REDUCE_USAGE = `Usage: npm run --silent reduce -- SHOT.json [SHOT.json ...] [--out DIR] [--series FILE]
         [--jobs N] [--again] [--setup-from FILE]

Reduces each shot file's footage to exit velocity, seal-burst time and the uncertainty of each.
Footage paths are relative to the shot file.

  --out DIR          write one NAME.result.json a shot into DIR (made where it is missing);
                     a shot whose result there was made from the same inputs is kept, not reduced
  --again            reduce those too
  --series FILE      write into FILE what the shots say together: mean, scatter, outliers
  --jobs N           reduce N shots at a time (else as many as processors and memory allow)
  --setup-from FILE  hold the still scenes of a setup's shots against that of this shot file or
                     setup file, not of the first shot named; may be given once a setup
  --help             show this

Without --out, one shot's result is printed as JSON; of several, one line of JSON each.
Exit code 0: every shot reduced; 1: at least one has no exit velocity (its result says why), or no
series could be made;
2: bad input or usage, one line on standard error a problem.`;

export const SERIES_USAGE = `Usage: npm run --silent series -- DIR|NAME.result.json [...] [--out FILE]

Makes of results that \`reduce --out\` wrote the file that \`reduce --series\` would have written.
Of a folder all *.result.json are taken, in the order of their names.

  --out FILE  write into FILE, not to standard output
  --help      show this

Exit code 0: the series was made; 1: it could not be made; 2: bad input or usage, one line on
standard error a problem; a result that cannot be used is left out.`;

export interface ReduceOrder {
  readonly shots: readonly string[];
  readonly out: string | null;
  readonly series: string | null;
  /** Null: as many as the machine can. */
  readonly jobs: number | null;
  readonly again: boolean;
  readonly setupFrom: readonly string[];
}

export interface SeriesOrder {
  /** Result files and folders of them. */
  readonly results: readonly string[];
  readonly out: string | null;
}

const wrong = (message: string): Outcome<never> => failure('usage', message, 'See --help.');

/** Reads the arguments of `reduce`. Failures: `usage`. */
export function readReduceArguments(args: readonly string[]): Outcome<ReduceOrder | 'help'> {
  const read = parsed(args, {
    ...{ out: { type: 'string' }, series: { type: 'string' }, jobs: { type: 'string' } },
    ...{ again: { type: 'boolean' }, 'setup-from': { type: 'string', multiple: true } },
    help: { type: 'boolean' },
  });
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  if (values.help === true) return success('help');
  if (positionals.length === 0) return wrong('No shot file was given.');
  const out = values.out ?? null;
  const shared = out === null ? undefined : sharedName(positionals);
  if (shared !== undefined) {
    return wrong(`Two shots would be written to the same file, ${shared}.`);
  }
  if (values.again === true && out === null) {
    return wrong('--again is about results kept in a folder, and --out names none.');
  }
  const jobs = values.jobs === undefined ? null : Number(values.jobs);
  if (jobs !== null && !(Number.isInteger(jobs) && jobs >= 1)) {
    return wrong(`--jobs takes a whole number from 1 on, not "${values.jobs}".`);
  }
  return success({
    ...{ shots: positionals, out, series: values.series ?? null, jobs },
    ...{ again: values.again ?? false, setupFrom: values['setup-from'] ?? [] },
  });
}

/** Reads the arguments of `series`. Failures: `usage`. */
export function readSeriesArguments(args: readonly string[]): Outcome<SeriesOrder | 'help'> {
  const read = parsed(args, { out: { type: 'string' }, help: { type: 'boolean' } });
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  if (values.help === true) return success('help');
  if (positionals.length === 0) return wrong('No result file or folder was given.');
  return success({ results: positionals, out: values.out ?? null });
}

function parsed<const Options extends NonNullable<ParseArgsConfig['options']>>(
  args: readonly string[],
  options: Options,
) {
  try {
    return success(parseArgs({ args: [...args], options, allowPositionals: true }));
  } catch (error) {
    return wrong(error instanceof Error ? error.message : String(error));
  }
}

/** A result's name that two shots share, if any: the second must not overwrite the first. */
function sharedName(shots: readonly string[]): string | undefined {
  const names = shots.map(resultName);
  return names.find((name, i) => names.indexOf(name) < i);
}
