import type { Reason } from '../core/reason';
import type { Result } from '../shot/result';
import { modelWords, sourceWords } from '../text/names';
import { reasonWords } from '../text/reasonWords';
import { showNumber } from '../text/show';
import { t } from '../text/text';
import { adviceWords, wholePercent } from './advice';
import { compactJson } from './compactJson';
import { findings } from './findings';
import {
  checkWords,
  chiSquareWords,
  downWeightedWords,
  monteCarloWords,
  type Verdict,
  verdictOn,
} from './fit';
import { inputsTable, settings } from './inputs';
import { type Finding, lineText, reasonLine } from './line';
import { mainTable } from './mainTable';
import { provenance, redo, redoBriefly } from './provenance';
import { quotable } from './statement';
import type { Fact, ReportSubject } from './subject';
import {
  burstBudget,
  centresTable,
  fitParameters,
  modelsCompared,
  type Table,
  velocityBudget,
} from './table';

/** One page with what matters most, or all there is. */
export type Extent = 'summary' | 'full';

/** Drawings and pictures, named; who shows the report draws them. */
export type FigureName =
  | 'events'
  /** The film around the muzzle, at burst and exit. */
  | 'keyFrames'
  /** The whole flight in one picture. */
  | 'flight'
  | 'position'
  | 'residuals'
  | 'velocity'
  | 'seal'
  | 'budget';

export type Block =
  | { readonly kind: 'quote' | 'paragraphs' | 'steps'; readonly texts: readonly string[] }
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  | { readonly kind: 'findings'; readonly findings: readonly Finding[] }
  | { readonly kind: 'table'; readonly table: Table }
  | { readonly kind: 'checks'; readonly checks: readonly Check[] }
  /** `brief`: without what to do about them. */
  | { readonly kind: 'warnings'; readonly reasons: readonly Reason[]; readonly brief: boolean }
  /** `pair`: two side by side where there is room. */
  | {
      readonly kind: 'figures';
      readonly names: readonly FigureName[];
      readonly layout: 'whole' | 'pair';
    }
  | { readonly kind: 'listing'; readonly text: string };

interface Check {
  readonly verdict: Verdict;
  readonly message: string;
  readonly remedy: string | null;
}

export interface Section {
  /** Empty: stands under the report's own title. */
  readonly title: string;
  readonly blocks: readonly Block[];
}

export interface ReportDocument {
  readonly title: string;
  /** Where, when and by what. */
  readonly subtitle: string;
  readonly sections: readonly Section[];
}

/** Warnings named on the one page; more are counted. */
const MOST_BRIEF_WARNINGS = 3;

/** Contributions named there. */
const MOST_CONTRIBUTIONS = 3;

/** The report as sections of blocks; nothing in it depends on where it is shown. */
export function reportDocument(subject: ReportSubject, extent: Extent): ReportDocument {
  const { shot, result, madeOn, rendered } = subject;
  return {
    title: result.shot.trim() || shot.name.trim() || t('report.document.unnamed'),
    subtitle: [
      t('report.document.what'),
      ...(rendered ? [t('shell.header.rendered')] : []),
      `exitframe ${result.software}`,
      madeOn,
    ].join(' · '),
    sections: (extent === 'summary' ? summary(subject) : full(subject)).filter(
      ({ blocks }) => blocks.length > 0,
    ),
  };
}

function summary(subject: ReportSubject): readonly Section[] {
  const { result, shot, speedUnit } = subject;
  return [
    section('', [
      { kind: 'quote', texts: quotable(result, speedUnit) },
      { kind: 'table', table: mainTable(result, speedUnit) },
    ]),
    section(t('report.document.section.film'), [
      { kind: 'figures', names: ['keyFrames'], layout: 'whole' },
      { kind: 'figures', names: ['position', 'velocity'], layout: 'pair' },
      ...largestWords(result),
    ]),
    section(t('report.document.section.warnings'), briefWarnings(result)),
    section(t('report.document.section.redo'), [
      { kind: 'paragraphs', texts: [redoBriefly(result, shot)] },
    ]),
  ];
}

/** What the uncertainty of the exit velocity comes from, largest first. */
function largestWords({ budget }: Result): readonly Block[] {
  const entries = [...budget.exitVelocity].sort((a, b) => b.contribution - a.contribution);
  const variance = entries.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  if (!(variance > 0)) return [];
  const named = entries
    .slice(0, MOST_CONTRIBUTIONS)
    .map(
      ({ source, contribution }) =>
        `${sourceWords(source)} ${wholePercent(contribution ** 2 / variance)}`,
    );
  return [paragraphs(t('report.document.largest', { sources: named.join(', ') }))];
}

function briefWarnings({ warnings }: Result): readonly Block[] {
  if (warnings.length === 0) {
    return [{ kind: 'paragraphs', texts: [t('report.document.noWarnings')] }];
  }
  const shown = warnings.slice(0, MOST_BRIEF_WARNINGS);
  const more = warnings.length - shown.length;
  return [
    { kind: 'warnings', reasons: shown.map(inWords), brief: true },
    ...(more > 0
      ? [
          {
            kind: 'paragraphs' as const,
            texts: [t('report.document.moreWarnings', { more: `${more}` })],
          },
        ]
      : []),
  ];
}

function full(subject: ReportSubject): readonly Section[] {
  const { result, shot, speedUnit, drive, cautions } = subject;
  const { budget, positions, warnings, breakUp } = result;
  return [
    section('', [
      { kind: 'quote', texts: quotable(result, speedUnit) },
      { kind: 'table', table: mainTable(result, speedUnit) },
      { kind: 'figures', names: ['events'], layout: 'whole' },
    ]),
    section(t('report.document.section.warnings'), [
      warnings.length === 0
        ? { kind: 'paragraphs', texts: [t('report.document.noWarnings')] }
        : { kind: 'warnings', reasons: warnings.map(inWords), brief: false },
    ]),
    section(t('report.document.section.film'), [
      { kind: 'figures', names: ['keyFrames', 'flight'], layout: 'whole' },
    ]),
    section(t('report.document.section.motion'), [
      { kind: 'figures', names: ['position', 'residuals', 'velocity', 'seal'], layout: 'whole' },
    ]),
    section(t('report.document.section.findings'), [
      ...(breakUp === null ? [] : [paragraphs(lineText(reasonLine(breakUp.reason)))]),
      { kind: 'findings', findings: findings(result, speedUnit) },
      paragraphs(driveWords(drive)),
    ]),
    section(t('report.document.section.uncertainty'), [
      { kind: 'figures', names: ['budget'], layout: 'whole' },
      ...tables(
        velocityBudget(budget.exitVelocity, speedUnit),
        burstBudget(budget.sealBurst, speedUnit),
      ),
      ...(budget.advice.length === 0
        ? []
        : [
            paragraphs(t('report.document.advice')),
            {
              kind: 'steps' as const,
              texts: budget.advice.map(({ source, share }) =>
                t('report.document.adviceLine', {
                  share: wholePercent(share),
                  source: sourceWords(source),
                  remedy: adviceWords({ source, share }),
                }),
              ),
            },
          ]),
    ]),
    section(t('report.document.section.fit'), fitBlocks(result, speedUnit)),
    section(t('report.document.section.stated'), [
      ...tables(inputsTable(shot)),
      { kind: 'facts', facts: settings(shot) },
      ...(shot.notes.trim() === ''
        ? []
        : [paragraphs(t('report.document.notes', { notes: shot.notes }))]),
    ]),
    section(t('report.document.section.centres'), tables(centresTable(positions))),
    section(t('report.document.section.redo'), [
      { kind: 'facts', facts: provenance(subject) },
      paragraphs(redo(shot)),
      { kind: 'listing', text: compactJson(shot) },
    ]),
    section(t('report.document.section.cautions'), [{ kind: 'steps', texts: cautions }]),
  ];
}

/** A reason as the page says it, under its own code. */
const inWords = (reason: Reason): Reason => ({ code: reason.code, ...reasonWords(reason) });

const section = (title: string, blocks: readonly Block[]): Section => ({ title, blocks });
const paragraphs = (...texts: readonly string[]): Block => ({ kind: 'paragraphs', texts });
const tables = (...all: readonly Table[]): readonly Block[] =>
  all.filter(({ rows }) => rows.length > 0).map((table) => ({ kind: 'table', table }));

/** What the air outside could do at most, and what that leaves out. */
export const driveWords = ({ force, acceleration, gravities }: ReportSubject['drive']): string =>
  t('report.findings.drive', {
    force: showNumber(force, 3),
    acceleration: showNumber(acceleration, 3),
    gravities: showNumber(gravities, 3),
  });

function fitBlocks({ fit, monteCarlo }: Result, speedUnit: string): readonly Block[] {
  if (!('model' in fit)) return [paragraphs(lineText(reasonLine(fit.unavailable)))];
  return [
    paragraphs(
      `${t('report.document.motion', { model: modelWords(fit.model) })} ${chiSquareWords(fit)} ${downWeightedWords(fit)}`.trim(),
    ),
    {
      kind: 'checks',
      checks: fit.checks.map((check) => ({
        verdict: verdictOn(check, fit),
        ...checkWords(check),
      })),
    },
    ...tables(modelsCompared(fit, speedUnit), fitParameters(fit)),
    paragraphs(
      'trials' in monteCarlo
        ? monteCarloWords(monteCarlo, speedUnit)
        : lineText(reasonLine(monteCarlo.unavailable)),
    ),
  ];
}
