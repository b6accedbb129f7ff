import { readFileSync } from 'node:fs';
import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { codesFile } from '../../../scripts/errorCodes';
import { german } from '../../../src/text/de';
import { english } from '../../../src/text/en';
import { spanish } from '../../../src/text/es';
import { french } from '../../../src/text/fr';

const OTHERS = { de: german, es: spanish, fr: french };

/** Texts by their paths. */
function textsOf(tree: object, before = ''): Map<string, string> {
  return new Map(
    Object.entries(tree).flatMap(([key, value]: [string, unknown]) =>
      typeof value === 'string'
        ? [[before + key, value] as const]
        : [...textsOf(value as object, `${before}${key}.`)],
    ),
  );
}

/** Names of the values and tags of a message, choices and plurals followed into their forms. */
function namesIn(text: string, language: string): string[] {
  const names = new Set<string>();
  const visit = (part: unknown): void => {
    if (Array.isArray(part)) {
      part.forEach(visit);
      return;
    }
    if (typeof part !== 'object' || part === null) return;
    const { type, value, options, children } = part as Readonly<Record<string, unknown>>;
    // 0 is plain text, 7 the number sign of a plural.
    if (type !== 0 && type !== 7 && typeof value === 'string') names.add(value);
    if (typeof options === 'object' && options !== null) {
      for (const form of Object.values(options)) visit((form as { value: unknown }).value);
    }
    visit(children);
  };
  visit(new IntlMessageFormat(text, language).getAst());
  return [...names].sort();
}

const texts = textsOf(english);
/** Held against the sources by `tooling/documents.test.ts`. */
const codes = new Set(
  [...readFileSync(codesFile, 'utf8').matchAll(/^\| `(\w+)` \|/gm)].map(([, code = '']) => code),
);
/** What no page says: the headless command does, or it tells of a fault in a call and not in what a person gave. */
const ENGLISH_ONLY = [
  ...['footageNotFound', 'shotNotFound', 'usage', 'noSetup', 'setupWithoutScene'],
  ...['processEnded', 'resultNotRead', 'resultWithoutInputs'],
  ...['badArgument', 'badInput', 'badRange', 'noPlane', 'notConnected', 'notPrepared'],
  ...['profilesUneven', 'runOver', 'sealFrameSize', 'singular', 'sizeMismatch', 'templateTooLarge'],
];
/** Said by texts of the page to begin with. */
const SAID_BY_PAGE = ['focalNominal', 'lampOffFrequency', 'lampOtherSize'];

describe.each(Object.entries(OTHERS))('texts in %s', (language, { texts: tree, reasons }) => {
  const own = textsOf(tree);

  it('are those there are in English, no fewer and no more', () => {
    expect([...own.keys()].sort()).toEqual([...texts.keys()].sort());
  });

  it('name the same values', () => {
    const named = (of: Map<string, string>, as: string) =>
      [...of].map(([key, text]) => [key, namesIn(text, as)]).sort();
    expect(named(own, language)).toEqual(named(texts, 'en'));
  });

  it('has words for every code that the page may show, and for no other', () => {
    const without = new Set([...ENGLISH_ONLY, ...SAID_BY_PAGE]);
    expect([...without].filter((code) => !codes.has(code))).toEqual([]);
    expect(Object.keys(reasons).sort()).toEqual([...codes].filter((c) => !without.has(c)).sort());
  });

  it('has words with values as in the other languages', () => {
    for (const [code, { message, remedy = '' }] of Object.entries(reasons)) {
      const german = OTHERS.de.reasons[code];
      expect([code, namesIn(message, language), namesIn(remedy, language)]).toEqual([
        code,
        namesIn(german?.message ?? '', 'de'),
        namesIn(german?.remedy ?? '', 'de'),
      ]);
    }
  });
});

describe('the check of values', () => {
  it('sees into choices, plurals and tags', () => {
    expect(
      namesIn('{a, select, x {{b}} other {<strong>{c}</strong>}} {n, plural, other {# {d}}}', 'en'),
    ).toEqual(['a', 'b', 'c', 'd', 'n', 'strong']);
  });
});
