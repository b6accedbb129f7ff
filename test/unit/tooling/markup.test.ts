import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Ways from a text to markup, a script or a spreadsheet that leave out the one place that guards it. */
const WAYS: readonly (readonly [what: string, pattern: RegExp, example: string])[] = [
  ['markup', /\.(inner|outer)HTML\s*\+?=(?!=)/, 'one.innerHTML = name'],
  [
    'markup',
    /insertAdjacentHTML|setHTMLUnsafe|createContextualFragment/,
    'a.insertAdjacentHTML(b, c)',
  ],
  ['markup', /document\.write|DOMParser|srcdoc/, 'document.write(name)'],
  ['markup', /dangerouslySetInnerHTML/, '<p dangerouslySetInnerHTML={x} />'],
  ['markup of d3', /\.html\(/, 'selection.html(name)'],
  ['a script', /<script|createElement\('script'\)/, 'const json = "<script>" + data'],
  ['code', /\beval\(|new Function\(|set(Timeout|Interval)\(['"`]/, 'new Function(name)'],
  ['an address that runs', /javascript:/, 'link.href = "javascript:" + name'],
  ['a sheet past its guard', /\b[ct]svFormat/, 'csvFormat(rows)'],
];

const sources = ['src', 'workers'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => join(folder, path)),
);

describe('no text becomes', () => {
  it.each(WAYS)('%s by way of %s', (_what, pattern, example) => {
    expect(example).toMatch(pattern);
    expect(sources.length).toBeGreaterThan(300);
    expect(sources.filter((path) => pattern.test(readFileSync(path, 'utf8')))).toEqual([]);
  });
});
