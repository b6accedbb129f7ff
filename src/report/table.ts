import { formatQuantity } from '../core/format';
import { unitOf } from '../core/unitTable';
import type { BudgetEntry, FitReport, Position } from '../shot/result';
import { modelWords, sourceWords } from '../text/names';
import { reasonWords } from '../text/reasonWords';
import {
  showAs,
  showCount,
  showFixed,
  showNumber,
  showQuantity,
  showShortNumber,
} from '../text/show';
import { t } from '../text/text';
import { parameterWords, supportWords } from './words';

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
  budget(t('report.tables.budget.velocity'), entries, speedIn(speedUnit), speedUnit);

/** The same of the burst time. */
export const burstBudget = (entries: readonly BudgetEntry[], speedUnit: string): Table =>
  budget(t('report.tables.budget.burst'), entries, { symbol: 's', perSi: 1 }, speedUnit);

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
      head(t('report.tables.budget.source')),
      text(t('report.tables.budget.type')),
      text(t('report.tables.budget.distribution')),
      number(t('report.tables.budget.u')),
      number(t('report.tables.budget.sensitivity')),
      number(t('report.tables.budget.contribution', { unit: unit.symbol })),
      number(t('report.tables.budget.share')),
      number(t('report.tables.main.dof')),
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
          sourceWords(source),
          type,
          t(`report.tables.budget.drawnFrom.${distribution}`),
          `${showShortNumber(u * input.perSi, 2)} ${input.symbol}`.trim(),
          showShortNumber((sensitivity * unit.perSi) / input.perSi, 3),
          showShortNumber(contribution * unit.perSi, 2),
          variance > 0 ? `${showFixed((100 * contribution ** 2) / variance, 1)} %` : '',
          dof === null ? '∞' : showNumber(dof, 3),
        ];
      }),
  };
}

/** The models of motion that were fitted, and how well each is supported. */
export function modelsCompared({ compared, model }: FitReport, speedUnit: string): Table {
  return {
    caption: t('report.tables.models.caption'),
    columns: [
      head(t('report.tables.models.motion')),
      number(t('report.tables.main.exitVelocity')),
      number(t('report.tables.models.chiSquare')),
      number('AICc'),
      number(t('report.tables.models.weight')),
      text(t('report.tables.models.support')),
    ],
    rows: compared.map((one) => [
      one.model === model
        ? t('report.tables.models.used', { model: modelWords(one.model) })
        : modelWords(one.model),
      showQuantity({ value: one.exitVelocity, u: one.u }, 'speed', speedUnit),
      `${showNumber(one.chiSquare, 4)} (${one.dof})`,
      showNumber(one.aicc, 4),
      showFixed(one.weight, 2),
      supportWords(one.evidenceRatio),
    ]),
  };
}

/** The fitted parameters, each with its standard uncertainty. */
export const fitParameters = ({ parameters }: FitReport): Table => ({
  caption: t('report.tables.parameters.caption'),
  columns: [
    head(t('report.tables.parameters.parameter')),
    number(t('report.tables.main.value')),
    number(t('report.tables.main.standardUncertainty')),
    text(t('report.tables.parameters.unit')),
  ],
  rows: parameters.map(({ name, unit, value, u }) => [
    parameterWords(name),
    showShortNumber(value, 6),
    showShortNumber(u, 2),
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
  return showAs(formatQuantity({ value, u }, kind, symbol).replace(` ${symbol}`, ''));
}

/** Whether a centre was used, and why not. */
export function useWords({ used, manual, why }: Position): string {
  const reason = why === null ? t('result.centres.use.leftOut') : reasonWords(why).message;
  const use = used ? t('result.centres.use.yes') : t('result.centres.use.no', { reason });
  return manual ? t('result.centres.use.manual', { use }) : use;
}

/** Every frame's centre. */
export function centresTable(positions: readonly Position[]): Table {
  const looked = lookedFor(positions);
  const used = positions.filter((one) => one.used).length;
  const found = looked.filter((one) => one.x !== null).length;
  return {
    caption: t('result.centres.summary', { found: showCount(found), used: showCount(used) }),
    columns: [
      head(t('result.centres.frame')),
      number(t('result.centres.time')),
      number(t('result.centres.x')),
      number(t('result.centres.y')),
      number(t('result.centres.distance')),
      text(t('result.centres.used')),
    ],
    rows: looked.map((one) => [
      String(one.frame),
      showNumber(one.time * 1000, 6),
      placeText(one.x, one.ux, 'pixels'),
      placeText(one.y, one.uy, 'pixels'),
      placeText(one.s, one.us, 'length'),
      useWords(one),
    ]),
  };
}
