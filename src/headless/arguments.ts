import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { failure, type Outcome, success } from '../core/reason';

export const USAGE = `Usage: npm run --silent reduce -- SHOT.json [SHOT.json ...] [--out DIR] [--series FILE]

Reduces each shot file's footage to exit velocity, seal-burst time and the uncertainty of each.
Footage paths are relative to the shot file.

  --out DIR      write one NAME.result.json a shot into DIR (made where it is missing)
  --series FILE  write into FILE what the shots say together: mean, scatter, outliers
  --help         show this

Without --out, one shot's result is printed as JSON; of several, one line of JSON each.
Exit code 0: every shot reduced; 1: at least one has no exit velocity (its result says why), or no
series could be made;
2: bad input or usage, one line on standard error a problem.`;

/** What the command was asked to do. */
export type Order =
  | { readonly kind: 'help' }
  | {
      readonly kind: 'reduce';
      readonly shots: readonly string[];
      readonly out: string | null;
      readonly series: string | null;
    };

/** `2031-04-17-C.shot.json` -> `2031-04-17-C.result.json` */
export const resultName = (shot: string): string =>
  `${basename(shot).replace(/(\.shot)?\.json$/, '')}.result.json`;

/** Reads the command's arguments. Failures: `usage`. */
export function readArguments(args: readonly string[]): Outcome<Order> {
  const usage = (message: string) => failure('usage', message, 'See --help.');
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { out: { type: 'string' }, series: { type: 'string' }, help: { type: 'boolean' } },
      allowPositionals: true,
    });
    if (values.help === true) return success({ kind: 'help' });
    if (positionals.length === 0) return usage('No shot file was given.');
    const out = values.out ?? null;
    const shared = out === null ? undefined : sharedName(positionals);
    if (shared !== undefined) {
      return usage(`Two shots would be written to the same file, ${shared}.`);
    }
    return success({ kind: 'reduce', shots: positionals, out, series: values.series ?? null });
  } catch (error) {
    return usage(error instanceof Error ? error.message : String(error));
  }
}

/** A result's name that two shots share, if any: the second must not overwrite the first. */
function sharedName(shots: readonly string[]): string | undefined {
  const names = shots.map(resultName);
  return names.find((name, i) => names.indexOf(name) < i);
}
