import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { reasonsIn } from '../../../scripts/errorCodes';

const DECLARED = `export {};
declare function refuse(frame: number, code: string, message: string): void;
declare function words(): string;
declare const kind: string;
declare class Fault { constructor(code: string, message: string); readonly code: string }
`;
const CASES = [
  {
    of: "a call, whatever the function's name",
    text: "refuse(3, 'tooDark', 'It is dark.');",
    codes: ['tooDark: It is dark.'],
  },
  {
    of: 'an error made',
    text: `new Fault('cutOff', \`Frame \${3} is cut off.\`);`,
    codes: ['cutOff: Frame … is cut off.'],
  },
  {
    of: 'an object',
    text: "({ code: 'old', message: 'It is ' + 'old.' });",
    codes: ['old: It is old.'],
  },
  {
    of: 'a message of two forms',
    text: "refuse(3, 'blur', Math.random() > 0.5 ? 'Long.' : 'Short.');",
    codes: ['blur: Long.', 'blur: Short.'],
  },
  {
    of: 'a text of the page',
    text: "declare function t(key: string): string; refuse(3, 'off', t('panels.footage.tooFew'));",
    codes: ['off: This film has … frames; a speed needs the ball in … at least.'],
  },
  { of: 'a message made elsewhere', text: "refuse(3, 'odd', words());", codes: ['odd: …'] },
  {
    of: 'one of two codes',
    text: "refuse(3, Math.random() > 0.5 ? 'hot' : 'cold', 'No.');",
    codes: ['hot: No.', 'cold: No.'],
  },
  {
    of: 'a constant',
    text: "const CODE = 'steady'; refuse(3, CODE, 'No.');",
    codes: ['steady: No.'],
  },
  {
    of: 'no code that is handed on',
    text: "refuse(3, new Fault('made', 'B.').code, 'B.');",
    codes: ['made: B.'],
  },
  { of: 'no exit code, which is a number', text: '({ code: 1 });', codes: [] },
] as const;

const folder = mkdtempSync(join(tmpdir(), 'codes-'));
afterAll(() => rmSync(folder, { recursive: true }));

function written(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, DECLARED + text);
  return path;
}

describe('codes are read off', () => {
  const found = reasonsIn(
    CASES.map(({ text }, i) => written(`case${i}.ts`, text)),
    folder,
  );

  it.each(CASES.map((one, i) => ({ ...one, i })))('$of', ({ codes, i }) => {
    const here = found.filter(({ file }) => file === `case${i}.ts`);
    expect(here.map(({ code, message }) => `${code}: ${message}`)).toEqual(codes);
  });

  it('or not at all: a code put together is refused', () => {
    const path = written('odd.ts', "({ code: 'bad' + kind, message: 'No.' });");
    expect(() => reasonsIn([path])).toThrow(/odd\.ts:6: the code `.*` cannot be read/);
  });
});
