import { csvParseRows } from 'd3';
import { type Cell, csvText, unguarded } from '../core/csv';
import { type Estimate, isAvailable } from '../core/estimate';
import { quantity } from '../core/quantity';
import { ExitframeError, type ReasonValues } from '../core/reason';
import { findUnit, fromSi, toSi, UNITS, type UnitKind, unitOf } from '../core/unitTable';
import type { Conditions, NotebookEntry } from '../shot/notebook';

/*
 * The notebook as a table: RFC 4180, one header row that names each column with its unit ("exit velocity, m/s"), its
 * standard uncertainty in a column of its own ("u of exit velocity, m/s"). What shots share stays behind: a table has no
 * place for it.
 */

interface Column {
  readonly name: string;
  readonly kind: UnitKind;
  /** Written in this one; any of its kind is read. */
  readonly unit: string;
  get(entry: NotebookEntry): Estimate | null;
}

const condition = (
  name: string,
  kind: UnitKind,
  unit: string,
  key: keyof Conditions,
): Column & { readonly key: keyof Conditions } => ({
  ...{ name, kind, unit, key },
  get: ({ conditions }) => conditions[key],
});

const VELOCITY: Column = {
  ...{ name: 'exit velocity', kind: 'speed', unit: 'm/s' },
  get: ({ exitVelocity }) => (isAvailable(exitVelocity) ? exitVelocity : null),
};
const LEAD: Column = {
  ...{ name: 'lead', kind: 'time', unit: 'ms' },
  get: ({ lead }) => (isAvailable(lead) ? lead : null),
};
const CONDITIONS = [
  condition('barrel length', 'length', 'm', 'barrelLength'),
  condition('bore diameter', 'length', 'mm', 'boreDiameter'),
  condition('residual pressure', 'pressure', 'hPa', 'residualPressure'),
  condition('seal burst pressure', 'pressure', 'hPa', 'sealBurstPressure'),
  condition('ball diameter', 'length', 'mm', 'ballDiameter'),
  condition('ball mass', 'mass', 'g', 'ballMass'),
  condition('air pressure', 'pressure', 'hPa', 'airPressure'),
  condition('air temperature', 'temperature', 'K', 'airTemperature'),
];
const COLUMNS: readonly Column[] = [VELOCITY, LEAD, ...CONDITIONS];

const SHOT = 'shot';
const COUNTED = 'counted';
const DOF = 'degrees of freedom of exit velocity';
const NOTES = 'notes';
const OF = 'u of ';
/** Coverage of the intervals of what a table states. */
const COVERAGE = 0.95;

const uKind = (kind: UnitKind): UnitKind =>
  kind === 'temperature' ? 'temperatureDifference' : kind;

/** The table's text, lines ended as RFC 4180 says. */
export function toCsv(entries: readonly NotebookEntry[]): string {
  const header = [
    SHOT,
    COUNTED,
    ...COLUMNS.flatMap(({ name, unit }) => [`${name}, ${unit}`, `${OF}${name}, ${unit}`]),
    DOF,
    NOTES,
  ];
  const rows = entries.map((entry) => [
    entry.name,
    entry.used ? 'yes' : 'no',
    ...COLUMNS.flatMap((column) => cellsOf(column, entry)),
    isAvailable(entry.exitVelocity) ? entry.exitVelocity.dof : null,
    entry.notes,
  ]);
  return csvText([header, ...rows]);
}

function cellsOf({ get, kind, unit }: Column, entry: NotebookEntry): [Cell, Cell] {
  const estimate = get(entry);
  if (estimate === null) return [null, null];
  // Enough figures to read the same number back, without the last ones of a binary fraction.
  const rounded = (x: number) => Number(x.toPrecision(12));
  return [
    rounded(fromSi(estimate.value, unitOf(kind, unit))),
    rounded(estimate.u / unitOf(kind, unit).factor),
  ];
}

export interface CsvRead {
  readonly entries: readonly NotebookEntry[];
  /** Columns of other names, which are not taken over. */
  readonly unknown: readonly string[];
}

interface ReadColumn {
  readonly column: Column;
  /** The value's column or that of its uncertainty. */
  readonly ofU: boolean;
  readonly factor: (typed: number) => number;
}

const wrong = (code: string, message: string, remedy: string, values?: ReasonValues) =>
  new ExitframeError(code, message, remedy, { values });

/**
 * Reads such a table. Columns may stand in any order and in any unit of their kind; all but `shot` and the exit velocity
 * with its uncertainty may be missing. Rows count from 1, the header. Throws `csvEmpty`, `csvColumnMissing`,
 * `csvColumnTwice`, `csvUnit`, `csvRowLength`, `csvNumber`, `csvNoUncertainty`, `csvNoName`, `csvNameTwice`.
 */
export function fromCsv(text: string): CsvRead {
  const [header, ...rows] = csvParseRows(text.replace(/^\uFEFF/, ''));
  if (header === undefined || rows.length === 0) {
    throw wrong('csvEmpty', 'The table has no row below its header.', 'Write one row a shot.');
  }
  const names = header.map((name) => name.trim());
  const [twice] = names.filter((name, i) => name !== '' && names.indexOf(name) !== i);
  if (twice !== undefined) {
    throw wrong('csvColumnTwice', `The column "${twice}" stands twice.`, 'Leave one of them out.', {
      column: twice,
    });
  }
  const columns = names.map(columnOf);
  for (const needed of [SHOT, VELOCITY.name, OF + VELOCITY.name]) {
    const found = names.some((name) => nameOf(name) === needed);
    if (!found) {
      throw wrong(
        'csvColumnMissing',
        `The table has no column "${needed}".`,
        `Name it in the header row, with its unit: "${VELOCITY.name}, m/s".`,
        { column: needed, example: `${VELOCITY.name}, m/s` },
      );
    }
  }
  const taken = new Set<string>();
  const entries = rows.flatMap((row, i) => {
    // An empty line at the end is no shot.
    if (row.length === 1 && row[0] === '') return [];
    const entry = entryIn(row, i + 2, names, columns);
    if (taken.has(entry.name)) {
      throw wrong(
        'csvNameTwice',
        `Row ${i + 2}: a shot named "${entry.name}" stands above already.`,
        'Give each shot a name of its own.',
        { row: i + 2, name: entry.name },
      );
    }
    taken.add(entry.name);
    return [entry];
  });
  const plain = [SHOT, COUNTED, DOF, NOTES];
  const unknown = names.filter((name, i) => columns[i] === null && !plain.includes(name));
  return { entries, unknown };
}

/** 'ball mass' of 'ball mass, g'. */
const nameOf = (head: string): string => head.replace(/,[^,]*$/, '');

function columnOf(head: string): ReadColumn | null {
  const name = nameOf(head);
  const ofU = name.startsWith(OF);
  const column = COLUMNS.find((one) => one.name === (ofU ? name.slice(OF.length) : name));
  if (column === undefined) return null;
  const kind = ofU ? uKind(column.kind) : column.kind;
  const symbol = head.slice(name.length + 1).trim();
  const unit = findUnit(kind, symbol);
  if (unit === undefined) {
    const known = UNITS[kind].map((one) => one.symbol).join(', ');
    throw wrong(
      'csvUnit',
      symbol === ''
        ? `The column "${head}" states no unit.`
        : `The column "${head}" is in "${symbol}", which is no unit it can be given in.`,
      `Write it after a comma; one of: ${known}.`,
      { form: symbol === '' ? 'none' : 'other', column: head, symbol, known },
    );
  }
  return { column, ofU, factor: (typed) => toSi(typed, unit) };
}

function entryIn(
  row: readonly string[],
  number: number,
  names: readonly string[],
  columns: readonly (ReadColumn | null)[],
): NotebookEntry {
  if (row.length !== names.length) {
    throw wrong(
      'csvRowLength',
      `Row ${number} has ${row.length} cells, the header ${names.length}.`,
      'Look for a missing comma or an unclosed quotation mark in it or above.',
      { row: number, cells: row.length, header: names.length },
    );
  }
  const cell = (name: string) => unguarded(row[names.indexOf(name)] ?? '').trim();
  const read = (column: Column): Estimate | null => {
    const of = (ofU: boolean) => {
      const i = columns.findIndex((one) => one?.column === column && one.ofU === ofU);
      const found = columns[i];
      return found ? numberIn(row[i] ?? '', number, names[i] ?? '', found.factor) : null;
    };
    const [value, u] = [of(false), of(true)];
    if (value === null) return null;
    if (u === null || u < 0) {
      throw wrong(
        'csvNoUncertainty',
        `Row ${number}: the ${column.name} has no standard uncertainty of 0 or more beside it.`,
        `Fill in the column "${OF}${column.name}".`,
        { row: number, column: column.name, ofU: OF + column.name },
      );
    }
    return { value, u };
  };
  const name = cell(SHOT);
  if (name === '') {
    throw wrong('csvNoName', `Row ${number}: the shot has no name.`, 'Fill in the column "shot".', {
      row: number,
      column: SHOT,
    });
  }
  // A number of degrees of freedom that is none is no number either.
  const positive = (x: number) => (x > 0 ? x : Number.NaN);
  const dof = names.includes(DOF) ? numberIn(cell(DOF), number, DOF, positive) : null;
  const reported = (column: Column, freedom: number | null) => {
    const estimate = read(column);
    return estimate === null
      ? NOT_IN_TABLE
      : quantity(estimate.value, estimate.u, freedom, COVERAGE);
  };
  const conditions = Object.fromEntries(
    CONDITIONS.map((column) => [column.key, read(column)]),
  ) as Conditions;
  return {
    ...{ name, conditions, shot: null, own: null, shared: [] },
    notes: cell(NOTES),
    used: !/^(no|0|false)$/i.test(cell(COUNTED)),
    exitVelocity: reported(VELOCITY, dof),
    lead: reported(LEAD, null),
  };
}

const NOT_IN_TABLE = {
  unavailable: { code: 'notInTable', message: 'The table states none.' },
};

/** Null: an empty cell. */
function numberIn(
  text: string,
  row: number,
  column: string,
  factor: (typed: number) => number,
): number | null {
  const plain = text.trim();
  if (plain === '') return null;
  const value = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain)
    ? factor(Number(plain))
    : Number.NaN;
  if (!Number.isFinite(value)) {
    throw wrong(
      'csvNumber',
      `Row ${row}, column "${column}": "${plain}" is not a number.`,
      'Write numbers with a point and no unit: 181.3.',
      { row, column, typed: plain },
    );
  }
  return value;
}
