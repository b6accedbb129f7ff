import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { expect, it } from 'vitest';
import { openTool } from './tool';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core'), 'utf8');

/** Every rule of WCAG 2.1 A and AA that axe-core can check; one line a breach. */
async function breaches(colorScheme: 'light' | 'dark'): Promise<string[]> {
  await using tool = await openTool({ colorScheme });
  const { page } = tool;
  await page.getByText('Frame 0 of clip.mp4').waitFor({ state: 'attached' });
  await page.evaluate(axe);
  const { violations } = await page.evaluate<AxeResults>(
    "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'] })",
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html}: ${failureSummary}`),
  );
}

it.each(['light', 'dark'] as const)('keeps the accessibility rules in %s', async (scheme) => {
  expect(await breaches(scheme)).toEqual([]);
});
