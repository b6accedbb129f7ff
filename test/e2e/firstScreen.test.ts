import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

const MOST_BYTES = 300 * 1024;

/** Scripts that must be there before the page's own code runs: those of the page and what they import outright. */
function firstScripts(): readonly string[] {
  const html = readFileSync('dist/index.html', 'utf8');
  const waiting = [...html.matchAll(/(?:src|href)="([^"]+\.js)"/g)].map(([, path]) =>
    join('dist', path ?? ''),
  );
  const found = new Set<string>();
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (found.has(path)) continue;
    found.add(path);
    const imports = readFileSync(path, 'utf8').matchAll(
      /(?:\bimport|\bfrom)\s*["'`](\.[^"'`]+)["'`]/g,
    );
    for (const [, name] of imports) waiting.push(join(dirname(path), name ?? ''));
  }
  return [...found];
}

it('has a first screen of less than 300 KiB of script, compressed', () => {
  const scripts = firstScripts();
  expect(scripts.length).toBeGreaterThan(0);
  const bytes = scripts.reduce((sum, path) => sum + gzipSync(readFileSync(path)).length, 0);
  expect(bytes).toBeGreaterThan(50 * 1024);
  expect(bytes).toBeLessThan(MOST_BYTES);
});
