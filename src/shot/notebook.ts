import * as v from 'valibot';
import { failure, type Outcome, success } from '../core/reason';
import { describeIssue, isRecord } from './issues';
import { migrated } from './parse';
import { estimate, finite, list, nonNegative, reported } from './resultSchema';
import { shotSchema } from './schema';

/**
 * The notebook: many shots with what was measured of each, in one file. SI units. `npm run schemas` writes the JSON
 * Schema from it.
 */
export const NOTEBOOK_FORMAT = 'exitframe-notebook';
export const NOTEBOOK_VERSION = 1;

const condition = v.nullable(estimate);
/** Degrees of freedom; null: unlimited. */
const dof = v.nullable(nonNegative);

const conditions = v.strictObject({
  /** m */
  barrelLength: condition,
  boreDiameter: condition,
  ballDiameter: condition,
  /** kg */
  ballMass: condition,
  /** Pa */
  residualPressure: condition,
  sealBurstPressure: condition,
  airPressure: condition,
  /** K */
  airTemperature: condition,
});

const entry = v.strictObject({
  /** Each name stands once in a notebook. */
  name: v.pipe(v.string(), v.nonEmpty()),
  notes: v.optional(v.string(), ''),
  /** Whether it counts in the statistics. */
  used: v.optional(v.boolean(), true),
  /** The shot as it was stated, by which its film is opened; null: the entry came from a table. */
  shot: v.nullable(shotSchema),
  /** m/s */
  exitVelocity: reported,
  /** Exit minus burst, s. */
  lead: reported,
  conditions,
  /** The part of the velocity's standard uncertainty that no other shot shares, m/s; null: all of it. */
  own: v.nullable(v.strictObject({ u: nonNegative, dof })),
  /** What the velocity shares with other shots: entries of one key share the input and its error; effect in m/s. */
  shared: v.optional(
    list(v.strictObject({ source: v.string(), key: v.string(), effect: finite, dof })),
    [],
  ),
});

export const notebookSchema = v.strictObject({
  format: v.literal(NOTEBOOK_FORMAT),
  version: v.literal(NOTEBOOK_VERSION),
  name: v.optional(v.string(), ''),
  entries: list(entry),
});

export type Notebook = v.InferOutput<typeof notebookSchema>;
export type NotebookEntry = v.InferOutput<typeof entry>;
export type Conditions = v.InferOutput<typeof conditions>;

/** A notebook's data. Failures: `notNotebook`, `newerNotebook`, `invalidNotebook`. */
export function validateNotebook(data: unknown): Outcome<Notebook> {
  if (!isRecord(data) || data.format !== NOTEBOOK_FORMAT) {
    return failure(
      'notNotebook',
      `This is not a notebook: its "format" is not "${NOTEBOOK_FORMAT}".`,
      'Choose a file whose name ends in .notebook.json.',
      { format: NOTEBOOK_FORMAT },
    );
  }
  if (typeof data.version === 'number' && data.version > NOTEBOOK_VERSION) {
    return failure(
      'newerNotebook',
      `The notebook has version ${data.version}; this program reads up to version ${NOTEBOOK_VERSION}.`,
      'Open it with the newer program that wrote it, or update this one.',
      { version: data.version, known: NOTEBOOK_VERSION },
    );
  }
  const parsed = v.safeParse(notebookSchema, withMigratedShots(data));
  const problem = parsed.success ? doubled(parsed.output) : describeIssue(parsed.issues[0]);
  if (parsed.success && problem === null) return success(parsed.output);
  return failure(
    'invalidNotebook',
    `The notebook cannot be used: ${problem}.`,
    'Correct that entry; the schema is in schemas/notebook.schema.json.',
    { why: `${problem}` },
  );
}

/** The shots in a notebook as old as themselves. */
function withMigratedShots(data: Record<string, unknown>): Record<string, unknown> {
  if (!Array.isArray(data.entries)) return data;
  const entries = data.entries.map((one: unknown) =>
    isRecord(one) && isRecord(one.shot) ? { ...one, shot: migrated(one.shot) } : one,
  );
  return { ...data, entries };
}

function doubled({ entries }: Notebook): string | null {
  const seen = new Set<string>();
  for (const { name } of entries) {
    if (seen.has(name)) return `two of its entries are named "${name}"`;
    seen.add(name);
  }
  return null;
}
