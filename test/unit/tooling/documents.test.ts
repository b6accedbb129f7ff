import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { codesFile, codesText } from '../../../scripts/errorCodes';
import { parseShot } from '../../../src/shot/parse';

const json = (path: string) => JSON.parse(readFileSync(path, 'utf8'));

/** First cells and last cells of a table's rows that name packages in code style. */
function packageRows(document: string): { names: string[]; licence: string }[] {
  return [...document.matchAll(/^\| (`[^|]+`) \|.*\| ([^|]+) \|$/gm)].map(([, names, licence]) => ({
    names: [...(names ?? '').matchAll(/`([^`]+)`/g)].map(([, name]) => name ?? ''),
    licence: licence ?? '',
  }));
}

describe('documents', () => {
  it('error-codes.md is what `npm run codes` writes', () => {
    expect(readFileSync(codesFile, 'utf8')).toBe(codesText());
  });

  it("the README's shot file can be read", () => {
    const example = /```json\n([^`]+)```/.exec(readFileSync('README.md', 'utf8'))?.[1];
    expect(parseShot(example ?? '')).toMatchObject({ ok: true });
  });

  const project = json('package.json');
  const dependencies = Object.keys({ ...project.dependencies, ...project.devDependencies });
  const [, section = ''] = readFileSync('DEVELOPERS.md', 'utf8').split('\n## Dependencies\n');
  const rows = packageRows(section.split('\n## ')[0] ?? '');

  it.each(dependencies)('%s stands in the table of dependencies with its licence', (name) => {
    const row = rows.find(({ names }) =>
      names.some((listed) => listed === name || listed === name.replace(/\/.*/, '/*')),
    );
    const stated = String(json(`node_modules/${name}/package.json`).license);
    expect(row?.licence.toLowerCase()).toContain(stated.replace(/[()]/g, '').toLowerCase());
  });
});
