import type { FootageInfo } from '../core/film';
import { formatCount, formatNumber } from '../core/format';
import type { Reason } from '../core/reason';
import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import { compactJson } from './compactJson';
import { findings } from './findings';
import { chiSquareWords, downWeightedWords, monteCarloWords, type Verdict, verdictOn } from './fit';
import { inputsTable, settings } from './inputs';
import { type Finding, lineText, reasonLine } from './line';
import { mainTable } from './mainTable';
import { quotable } from './statement';
import {
  burstBudget,
  centresTable,
  fitParameters,
  modelsCompared,
  type Table,
  velocityBudget,
} from './table';
import { modelWords } from './words';

/** What a report is made from. */
export interface ReportSubject {
  readonly result: Result;
  /** The shot that the result was concluded from. */
  readonly shot: Shot;
  readonly footage: FootageInfo;
  /** What the outside air could do at most; a rule of thumb beside the result. */
  readonly drive: {
    readonly force: number;
    readonly acceleration: number;
    readonly gravities: number;
  };
  /** The footage is a rendered sample. */
  readonly rendered: boolean;
  readonly speedUnit: string;
  /** Day it is made on, ISO 8601: '2031-04-17'. */
  readonly madeOn: string;
  /** What anyone near such a launcher is asked, last of all to defer to local rules. */
  readonly cautions: readonly string[];
}

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

interface Fact {
  readonly name: string;
  readonly text: string;
}

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
    title: result.shot.trim() || shot.name.trim() || 'Unnamed shot',
    subtitle: [
      'Exit velocity and seal burst from high-speed film',
      ...(rendered ? ['rendered sample, Brinewick Teaching Laboratory'] : []),
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
    section('What the film shows', [
      { kind: 'figures', names: ['keyFrames'], layout: 'whole' },
      { kind: 'figures', names: ['position', 'velocity'], layout: 'pair' },
      ...largestWords(result),
    ]),
    section('Warnings', briefWarnings(result)),
    section('To redo it', [{ kind: 'paragraphs', texts: [redoBriefly(result, shot)] }]),
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
        `${source} ${Math.round((100 * contribution ** 2) / variance)}\u00a0%`,
    );
  return [
    paragraphs(
      `The uncertainty of the exit velocity comes mostly from: ${named.join(', ')} (of the variance).`,
    ),
  ];
}

function briefWarnings({ warnings }: Result): readonly Block[] {
  if (warnings.length === 0) {
    return [{ kind: 'paragraphs', texts: ['The measurement gave none.'] }];
  }
  const shown = warnings.slice(0, MOST_BRIEF_WARNINGS);
  const more = warnings.length - shown.length;
  return [
    { kind: 'warnings', reasons: shown, brief: true },
    ...(more > 0
      ? [{ kind: 'paragraphs' as const, texts: [`And ${more} more: see the full report.`] }]
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
    section('Warnings', [
      warnings.length === 0
        ? { kind: 'paragraphs', texts: ['The measurement gave none.'] }
        : { kind: 'warnings', reasons: warnings, brief: false },
    ]),
    section('What the film shows', [
      { kind: 'figures', names: ['keyFrames', 'flight'], layout: 'whole' },
    ]),
    section('Motion', [
      { kind: 'figures', names: ['position', 'residuals', 'velocity', 'seal'], layout: 'whole' },
    ]),
    section('What else the film tells', [
      ...(breakUp === null ? [] : [paragraphs(lineText(reasonLine(breakUp.reason)))]),
      { kind: 'findings', findings: findings(result, speedUnit) },
      paragraphs(driveWords(drive)),
    ]),
    section('Uncertainty', [
      { kind: 'figures', names: ['budget'], layout: 'whole' },
      ...tables(
        velocityBudget(budget.exitVelocity, speedUnit),
        burstBudget(budget.sealBurst, speedUnit),
      ),
      ...(budget.advice.length === 0
        ? []
        : [
            paragraphs('What would help most:'),
            {
              kind: 'steps' as const,
              texts: budget.advice.map(
                ({ source, share, message }) =>
                  `${Math.round(share * 100)}\u00a0% ${source}. ${message}`,
              ),
            },
          ]),
    ]),
    section('Fit', fitBlocks(result, speedUnit)),
    section('What was stated', [
      ...tables(inputsTable(shot)),
      { kind: 'facts', facts: settings(shot) },
      ...(shot.notes.trim() === '' ? [] : [paragraphs(`Notes: ${shot.notes}`)]),
    ]),
    section('Centres', tables(centresTable(positions))),
    section('To redo it', [
      { kind: 'facts', facts: provenance(subject) },
      paragraphs(redo(shot)),
      { kind: 'listing', text: compactJson(shot) },
    ]),
    section('Cautions', [{ kind: 'steps', texts: cautions }]),
  ];
}

const section = (title: string, blocks: readonly Block[]): Section => ({ title, blocks });
const paragraphs = (...texts: readonly string[]): Block => ({ kind: 'paragraphs', texts });
const tables = (...all: readonly Table[]): readonly Block[] =>
  all.filter(({ rows }) => rows.length > 0).map((table) => ({ kind: 'table', table }));

/** What the air outside could do at most, and what that leaves out. */
export const driveWords = ({ force, acceleration, gravities }: ReportSubject['drive']): string =>
  `For comparison: in a perfect vacuum the air outside would push with about ${formatNumber(force, 3)} N: ${formatNumber(acceleration, 3)} m/s² at first, ${formatNumber(gravities, 3)} g. The air column behind the ball must be accelerated too.`;

function fitBlocks({ fit, monteCarlo }: Result, speedUnit: string): readonly Block[] {
  if (!('model' in fit)) return [paragraphs(lineText(reasonLine(fit.unavailable)))];
  return [
    paragraphs(
      `Motion: ${modelWords(fit.model)}. ${chiSquareWords(fit)} ${downWeightedWords(fit)}`.trim(),
    ),
    {
      kind: 'checks',
      checks: fit.checks.map((check) => ({
        verdict: verdictOn(check, fit),
        message: check.message,
        remedy: check.passed ? null : check.remedy,
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

const footagePath = ({ footage }: Shot): string => {
  if ('path' in footage) return footage.path;
  return `${footage.paths[0]} and ${footage.paths.length - 1} more`;
};

function provenance({ result, shot, footage, madeOn }: ReportSubject): readonly Fact[] {
  const { container, codec, width, height, frameCount, bitDepth, decoder } = footage;
  return [
    { name: 'Software', text: `exitframe ${result.software}` },
    { name: 'Report made on', text: madeOn },
    { name: 'Footage', text: footagePath(shot) },
    { name: 'SHA-256 of the footage', text: result.footageSha256 ?? 'not worked out' },
    {
      name: 'Film',
      text: `${container}, ${codec}, ${width} × ${height} pixels, ${bitDepth} bits, ${formatCount(frameCount)} frames`,
    },
    { name: 'Decoded by', text: decoder.name },
    {
      name: 'Scale found',
      text: `${formatNumber(result.scale.value * 1000, 6)} mm/px, standard uncertainty ${formatNumber(result.scale.u * 1000, 2)} mm/px`,
    },
    { name: 'Seed of the random numbers', text: String(shot.seed) },
    { name: 'Shot file version', text: String(shot.version) },
  ];
}

const redoBriefly = ({ software, footageSha256, fit }: Result, shot: Shot): string =>
  [
    `exitframe ${software}, footage ${footagePath(shot)} with SHA-256 ${footageSha256 ?? 'not worked out'}, seed ${shot.seed}.`,
    'model' in fit ? `Motion fitted: ${modelWords(fit.model)}.` : '',
    'The full report holds every input with its uncertainty and the shot file.',
  ]
    .filter((text) => text !== '')
    .join(' ');

const redo = (shot: Shot): string =>
  `Same inputs, same result: put the shot file below beside ${footagePath(shot)} and run npm run --silent reduce with its name, or open both in exitframe. Lengths are in metres, times in seconds, image positions in pixels.`;
