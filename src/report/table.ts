import { formatCount, formatNumber, formatQuantity, shortNumber } from '../core/format';
import { unitOf } from '../core/unitTable';
import type { BudgetEntry, FitReport, Position } from '../shot/result';
import { DISTRIBUTION_WORDS, modelWords, supportWords } from './words';

/** A table to be shown as it stands: every cell is text. */
export interface Table {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}

interface Column {
  readonly title: string;
  /** `head`: names its row. `number`: set to the right, not broken. */
  readonly kind: 'head' | 'number' | 'text';
}

export const head = (title: string): Column => ({ title, kind: 'head' });
export const number = (title: string): Column => ({ title, kind: 'number' });
export const text = (title: string): Column => ({ title, kind: 'text' });

/** A unit and how many of it make one SI unit. */
interface Shown {
  readonly symbol: string;
  readonly perSi: number;
}

const METRES_PER_SECOND = 'm/s';
const speedIn = (symbol: string): Shown => ({ symbol, perSi: 1 / unitOf('speed', symbol).factor });

/** What each source adds to the uncertainty of the exit velocity (layout of JCGM 100, Annex H.1), largest first. */
export const velocityBudget = (entries: readonly BudgetEntry[], speedUnit: string): Table =>
  budget('Budget of the exit velocity', entries, speedIn(speedUnit), speedUnit);

/** The same of the burst time. */
export const burstBudget = (entries: readonly BudgetEntry[], speedUnit: string): Table =>
  budget('Budget of the burst time', entries, { symbol: 's', perSi: 1 }, speedUnit);

function budget(
  caption: string,
  entries: readonly BudgetEntry[],
  unit: Shown,
  speedUnit: string,
): Table {
  const variance = entries.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  return {
    caption,
    columns: [
      head('Source'),
      text('Type'),
      text('Distribution'),
      number('u of the input'),
      number('Sensitivity'),
      number(`Contribution, ${unit.symbol}`),
      number('Share'),
      number('dof'),
    ],
    rows: [...entries]
      .sort((a, b) => b.contribution - a.contribution)
      .map(({ source, type, distribution, u, unit: own, sensitivity, contribution, dof }) => {
        // Inputs that are speeds themselves are shown in the unit chosen for speeds.
        const input =
          own === METRES_PER_SECOND
            ? speedIn(speedUnit)
            : { symbol: own === '1' ? '' : own, perSi: 1 };
        return [
          source,
          type,
          DISTRIBUTION_WORDS[distribution],
          `${shortNumber(u * input.perSi, 2)} ${input.symbol}`.trim(),
          shortNumber((sensitivity * unit.perSi) / input.perSi, 3),
          shortNumber(contribution * unit.perSi, 2),
          variance > 0 ? `${((100 * contribution ** 2) / variance).toFixed(1)} %` : '',
          dof === null ? '∞' : formatNumber(dof, 3),
        ];
      }),
  };
}

/** The models of motion that were fitted, and how well each is supported. */
export function modelsCompared({ compared, model }: FitReport, speedUnit: string): Table {
  return {
    caption: 'Models compared',
    columns: [
      head('Motion'),
      number('Exit velocity'),
      number('Chi-square (dof)'),
      number('AICc'),
      number('Weight'),
      text('Support'),
    ],
    rows: compared.map((one) => [
      `${modelWords(one.model)}${one.model === model ? ' (used)' : ''}`,
      formatQuantity({ value: one.exitVelocity, u: one.u }, 'speed', speedUnit),
      `${formatNumber(one.chiSquare, 4)} (${one.dof})`,
      formatNumber(one.aicc, 4),
      one.weight.toFixed(2),
      supportWords(one.evidenceRatio),
    ]),
  };
}

/** 'exit velocity' of `exitVelocity`. */
const inWords = (name: string): string =>
  name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** The fitted parameters, each with its standard uncertainty. */
export const fitParameters = ({ parameters }: FitReport): Table => ({
  caption: 'Fitted parameters',
  columns: [head('Parameter'), number('Value'), number('Standard uncertainty'), text('Unit')],
  rows: parameters.map(({ name, unit, value, u }) => [
    inWords(name),
    shortNumber(value, 6),
    shortNumber(u, 2),
    unit,
  ]),
});

/** Positions a person would look at: found, placed by hand, or left out for a reason. */
export const lookedFor = (positions: readonly Position[]): readonly Position[] =>
  positions.filter((one) => one.x !== null || one.manual || one.why !== null);

/** '34.56 ± 0.03' in pixels or millimetres; empty where there is none. */
export function placeText(
  value: number | null,
  u: number | null,
  kind: 'pixels' | 'length',
): string {
  if (value === null || u === null) return '';
  const symbol = kind === 'pixels' ? 'px' : 'mm';
  return formatQuantity({ value, u }, kind, symbol).replace(` ${symbol}`, '');
}

/** Whether a centre was used, and why not. */
const useWords = ({ used, manual, why }: Position): string =>
  `${used ? 'yes' : `no: ${why?.message ?? 'left out'}`}${manual ? ' (placed by hand)' : ''}`;

/** Every frame's centre. */
export function centresTable(positions: readonly Position[]): Table {
  const looked = lookedFor(positions);
  const used = positions.filter((one) => one.used).length;
  const found = looked.filter((one) => one.x !== null).length;
  return {
    caption: `Centres of ${formatCount(found)} frames, ${formatCount(used)} used`,
    columns: [
      head('Frame'),
      number('Time, ms'),
      number('x, px'),
      number('y, px'),
      number('Distance, mm'),
      text('Used'),
    ],
    rows: looked.map((one) => [
      String(one.frame),
      formatNumber(one.time * 1000, 6),
      placeText(one.x, one.ux, 'pixels'),
      placeText(one.y, one.uy, 'pixels'),
      placeText(one.s, one.us, 'length'),
      useWords(one),
    ]),
  };
}
