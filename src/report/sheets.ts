import type { Cell, Sheet } from '../core/csv';
import { isAvailable, type Quantity, type Reported } from '../core/estimate';
import type { BudgetEntry, Result } from '../shot/result';

/* Sheets in SI units, named with their unit in the first row. */

interface Row {
  readonly name: string;
  readonly unit: string;
  readonly reported: Reported | Result['sealBurst'];
}

/**
 * What the result states, one column a number: 'exit velocity, m/s', 'u of exit velocity, m/s', its interval's ends,
 * degrees of freedom, and why a number is missing. The notebook reads the first of them.
 */
export function resultSheet(result: Result): Sheet {
  const { flight } = result;
  const rows: readonly Row[] = [
    { name: 'exit velocity', unit: 'm/s', reported: result.exitVelocity },
    { name: 'exit time', unit: 's', reported: result.exitTime },
    { name: 'seal burst', unit: 's', reported: result.sealBurst },
    { name: 'lead', unit: 's', reported: result.lead },
    { name: 'leading point at the seal', unit: 's', reported: result.contact },
    { name: 'elevation', unit: 'rad', reported: flight.elevation },
    { name: 'kinetic energy', unit: 'J', reported: flight.kineticEnergy },
    { name: 'momentum', unit: 'kg m/s', reported: flight.momentum },
    { name: 'mean acceleration in the bore', unit: 'm/s^2', reported: flight.boreAcceleration },
    { name: 'deceleration', unit: 'm/s^2', reported: flight.deceleration },
    { name: 'drag coefficient', unit: '1', reported: flight.dragCoefficient },
    { name: 'rotation', unit: 'rad/s', reported: result.spin },
  ];
  const columns = rows.flatMap(({ name, unit, reported }) => {
    const value = 'value' in reported ? reported : null;
    return quantityColumns(name, unit, value).concat([
      [`why no ${name}`, 'value' in reported ? '' : reported.unavailable.message],
    ]);
  });
  const all: readonly (readonly [string, Cell])[] = [
    ['shot', result.shot],
    ...columns,
    ['coverage of the intervals', coverageOf(result)],
    ['software', `exitframe ${result.software}`],
    ['SHA-256 of the footage', result.footageSha256],
  ];
  return [all.map(([name]) => name), all.map(([, cell]) => cell)];
}

const quantityColumns = (
  name: string,
  unit: string,
  value: Quantity | null,
): (readonly [string, Cell])[] => [
  [`${name}, ${unit}`, value?.value ?? null],
  [`u of ${name}, ${unit}`, value?.u ?? null],
  [`low end of ${name}, ${unit}`, value?.interval[0] ?? null],
  [`high end of ${name}, ${unit}`, value?.interval[1] ?? null],
  [`degrees of freedom of ${name}`, value?.dof ?? null],
];

function coverageOf({ exitVelocity, sealBurst }: Result): number | null {
  if (isAvailable(exitVelocity)) return exitVelocity.coverage;
  return 'value' in sealBurst ? sealBurst.coverage : null;
}

/** Every frame's centre, one row a frame. */
export const centresSheet = ({ positions }: Result): Sheet => [
  [
    'frame',
    'time, s',
    'x, px',
    'y, px',
    'u of x, px',
    'u of y, px',
    'covariance of x and y, px^2',
    'distance from the muzzle plane, m',
    'u of distance, m',
    'visible share of the outline',
    'shift of the scene across, px',
    'shift of the scene down, px',
    'used',
    'placed by hand',
    'why not used',
  ],
  ...positions.map((one) => [
    one.frame,
    one.time,
    one.x,
    one.y,
    one.ux,
    one.uy,
    one.cov,
    one.s,
    one.us,
    one.visible,
    ...one.shift,
    one.used ? 'yes' : 'no',
    one.manual ? 'yes' : 'no',
    one.why?.message ?? '',
  ]),
];

/** The uncertainty budgets of exit velocity and burst time, one row an input. */
export const budgetSheet = ({ budget }: Result): Sheet => [
  [
    'of',
    'source',
    'type',
    'distribution',
    'unit of the input',
    'u of the input, in its unit',
    'sensitivity, SI units',
    'contribution, m/s or s',
    'degrees of freedom',
  ],
  ...budget.exitVelocity.map(budgetRow('exit velocity')),
  ...budget.sealBurst.map(budgetRow('seal burst')),
];

const budgetRow =
  (of: string) =>
  (one: BudgetEntry): readonly Cell[] => [
    of,
    one.source,
    one.type,
    one.distribution,
    one.unit,
    one.u,
    one.sensitivity,
    one.contribution,
    one.dof,
  ];
