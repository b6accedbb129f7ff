import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Source files below a folder, as paths from the project's root. */
function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}

describe('folder map', () => {
  it('has a line for each folder of the program, and no other', () => {
    const map = readFileSync('src/README.md', 'utf8');
    const listed = [...map.matchAll(/^\| `([a-z]+)` \|/gm)].map(([, name]) => name);
    const folders = readdirSync('src', { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
    expect(listed.sort()).toEqual(folders.sort());
  });

  // Workers are named by address, which the import rules cannot see.
  it('names worker files in one place', () => {
    const naming = sourceFiles('src').filter((file) =>
      readFileSync(file, 'utf8').includes('workers/'),
    );
    expect(naming).toEqual([join('src', 'app', 'workforce.ts')]);
  });
});
