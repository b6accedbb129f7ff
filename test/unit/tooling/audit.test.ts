import { describe, expect, it } from 'vitest';
import { judgeAudit } from '../../../scripts/audit.mjs';

/** As npm 11 writes it, cut to what is read. */
const answer = (counts: object, vulnerabilities: object = {}) =>
  JSON.stringify({
    auditReportVersion: 2,
    vulnerabilities,
    metadata: {
      vulnerabilities: {
        ...{ info: 0, low: 0, moderate: 0, high: 0, critical: 0, total: 0 },
        ...counts,
      },
    },
  });

describe('the audit of packages', () => {
  it('passes where nothing grave is known, and counts the rest', () => {
    expect(judgeAudit(answer({})).outcome).toBe('passed');
    const lesser = judgeAudit(answer({ moderate: 2, total: 2 }));
    expect(lesser.outcome).toBe('passed');
    expect(lesser.lines[0]).toContain('2 with lesser ones');
  });

  it.each(['high', 'critical'])('fails at one that is %s, and names it', (severity) => {
    const found = { pack: { name: 'pack', severity, range: '<1.2.3' } };
    const { outcome, lines } = judgeAudit(answer({ [severity]: 1, total: 1 }, found));
    expect(outcome).toBe('failed');
    expect(lines).toContain(`pack <1.2.3: ${severity}`);
  });

  it.each([
    ['no network', JSON.stringify({ message: 'connect ECONNREFUSED', error: {} }), 'ECONNREFUSED'],
    ['a registry that refuses', JSON.stringify({ message: '405 Method Not Allowed' }), '405'],
    ['no answer', '', 'no answer'],
    ['an answer without counts', '{}', 'no counts'],
  ])('says plainly that it knows nothing: %s', (_what, text, why) => {
    const { outcome, lines } = judgeAudit(text);
    expect(outcome).toBe('not reached');
    expect(lines[0]).toMatch(/^NOT AUDITED/);
    expect(lines[0]).toContain(why);
  });
});
