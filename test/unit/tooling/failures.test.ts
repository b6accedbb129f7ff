import { describe, expect, it } from 'vitest';
import { failuresIn } from '../../../scripts/failures.mjs';

/** A report as vitest writes it, cut to what is read. */
const report = (...testResults: object[]) => JSON.stringify({ testResults });
const failed = (fullName: string, ...failureMessages: string[]) => ({
  ...{ status: 'failed', fullName, failureMessages },
});
const passed = { status: 'passed', fullName: 'goes well', failureMessages: [] };

describe('what failed, at the end of all checks', () => {
  it('names file and test, with the head of the message and no colours', () => {
    const long = Array.from({ length: 40 }, (_, i) => `line ${i}`).join('\n');
    const text = report(
      { name: 'a.test.ts', status: 'passed', message: '', assertionResults: [passed] },
      {
        ...{ name: 'b.test.ts', status: 'failed', message: '' },
        assertionResults: [
          passed,
          failed('adds up', '\u001b[31mexpected 1\u001b[39m'),
          failed('x', long),
        ],
      },
    );
    const [first, second, ...none] = failuresIn(text);
    expect(first).toBe('b.test.ts: adds up\n    expected 1');
    expect(second).toContain('line 7');
    expect(second).not.toContain('line 8');
    expect(none).toEqual([]);
  });

  it('names a file none of whose tests ran', () => {
    const broken = { name: 'c.test.ts', status: 'failed', message: 'no such module' };
    const [only] = failuresIn(report({ ...broken, assertionResults: [] }));
    expect(only).toBe('c.test.ts: not run to its end\n    no such module');
  });

  it.each([
    ['no report', ''],
    ['half a report', '{"testResults": ['],
    ['a report without failures', report()],
  ])('never says nothing of a failed run: %s', (_what, text) => {
    expect(failuresIn(text)).toHaveLength(1);
  });
});
