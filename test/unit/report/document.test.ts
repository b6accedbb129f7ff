import { describe, expect, it } from 'vitest';
import { type Block, type ReportDocument, reportDocument } from '../../../src/report/document';
import type { ReportSubject } from '../../../src/report/subject';
import { infoOf } from '../../fixtures/crew';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const SHA = 'f'.repeat(64);

function subjectOf(change: Partial<ReportSubject> = {}): ReportSubject {
  const shot = { ...exampleShot(), name: '2031-04-17 C', seed: 7, notes: 'Damp paper.' };
  const { result, drive } = exampleReduction({ shot, footageSha256: SHA });
  return {
    ...{ shot, result, drive },
    footage: infoOf('clip.mp4', 20),
    rendered: false,
    speedUnit: 'm/s',
    madeOn: '2031-04-18',
    cautions: ['Stand behind.'],
    ...change,
  };
}

const blocksOf = ({ sections }: ReportDocument): readonly Block[] =>
  sections.flatMap(({ blocks }) => blocks);

/** All of its words. */
const wordsOf = (report: ReportDocument): string => JSON.stringify(report);

describe('the full report', () => {
  const report = reportDocument(subjectOf(), 'full');
  const words = wordsOf(report);

  it('holds all that is needed to redo it', () => {
    for (const needed of ['exitframe 0.0.0', SHA, '2031-04-18', 'Seed of the random numbers']) {
      expect(words).toContain(needed);
    }
    const listing = blocksOf(report).find((block) => block.kind === 'listing');
    // The shot file can be taken out of it as it stands.
    expect(listing?.kind === 'listing' && JSON.parse(listing.text)).toEqual(subjectOf().shot);
  });

  it('has every stated input with its uncertainty', () => {
    const tables = blocksOf(report).flatMap((block) =>
      block.kind === 'table' ? [block.table] : [],
    );
    const inputs = tables.find(({ caption }) => caption.startsWith('What was stated'));
    expect(inputs?.rows).toContainEqual(['recording rate', '12\u202f000', '0.6', '/s']);
    expect(inputs?.rows).toContainEqual(['known length', '20', '0.05', 'mm']);
    expect(inputs?.rows).toContainEqual(['ball mass', '1.9', '0.01', 'g']);
    expect(inputs?.rows).toContainEqual(['air temperature', '293.15', '2', 'K']);
    // Stated without one.
    expect(inputs?.rows).toContainEqual(['u of each end of known length', '0.3', '', 'px']);
  });

  it('has budget, checks, warnings with remedies, cautions and notes', () => {
    expect(words).toContain('Budget of the exit velocity');
    expect(words).toContain('Residuals change sign as chance would have it.');
    expect(words).toContain('"remedy":"Film at a higher rate."');
    expect(words).toContain('Stand behind.');
    expect(words).toContain('Notes: Damp paper.');
    const warnings = blocksOf(report).find((block) => block.kind === 'warnings');
    expect(warnings?.kind === 'warnings' && warnings.brief).toBe(false);
  });

  it('says what was left out by hand', () => {
    const shot = exampleShot();
    const edited = { ...shot, edits: { ...shot.edits, rejectedFrames: [7, 3] } };
    const facts = blocksOf(reportDocument(subjectOf({ shot: edited }), 'full')).flatMap((block) =>
      block.kind === 'facts' ? block.facts : [],
    );
    expect(facts).toContainEqual({ name: 'Frames rejected by hand', text: '3, 7' });
  });
});

describe('the one page', () => {
  it('has statement, pictures, warnings and where it comes from', () => {
    const report = reportDocument(subjectOf(), 'summary');
    expect(report.title).toBe('2031-04-17 C');
    expect(report.sections.map(({ title }) => title)).toEqual([
      '',
      'What the film shows',
      'Warnings',
      'To redo it',
    ]);
    // (0.04 / 0.0412)^2 = 94 %.
    expect(wordsOf(report)).toContain('fit 94\u00a0%, known length 6\u00a0%');
    expect(wordsOf(report)).toContain(SHA);
  });

  it('counts the warnings that would not fit', () => {
    const { result } = subjectOf();
    const warnings = Array.from({ length: 7 }, (_, i) => ({
      ...{ code: `w${i}`, message: `Warning ${i}.`, remedy: '' },
    }));
    const report = reportDocument(subjectOf({ result: { ...result, warnings } }), 'summary');
    expect(wordsOf(report)).toContain('And 4 more: see the full report.');
    expect(wordsOf(report)).not.toContain('Warning 3.');
  });

  it('says when a sample was rendered, and names an unnamed shot', () => {
    const { result, shot } = subjectOf();
    const bare = { result: { ...result, shot: ' ' }, shot: { ...shot, name: '' } };
    const report = reportDocument(subjectOf({ ...bare, rendered: true }), 'summary');
    expect(report.title).toBe('Unnamed shot');
    expect(report.subtitle).toContain('rendered sample');
  });

  it('says why where nothing could be measured', () => {
    const none = { unavailable: { code: 'noBall', message: 'No ball was found.' } };
    const { result } = subjectOf();
    const empty = {
      ...result,
      ...{ exitVelocity: none, lead: none, exitTime: none, contact: none, contactLead: none },
      fit: none,
      monteCarlo: none,
      sealBurst: { ...none, bounds: [null, null] as const },
      budget: { exitVelocity: [], sealBurst: [], advice: [] },
    };
    for (const extent of ['summary', 'full'] as const) {
      const words = wordsOf(reportDocument(subjectOf({ result: empty }), extent));
      expect(words).toContain('No exit velocity can be stated: No ball was found.');
      expect(words).not.toContain('Its uncertainty comes');
      expect(words).not.toMatch(/NaN|undefined|no value/);
    }
  });
});
