import axe from 'axe-core';
import { describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { STEPS } from '../../../src/app/draft';
import { measuredClip, mountPage } from './mountPage';

// Success criteria of WCAG 2.1, levels A and AA, as far as a program can check them.
describe.each(['light', 'dark'] as const)('%s', (theme) => {
  it('meets the checkable success criteria in every step of a measured shot', async () => {
    const { host, session, preferences, desk, unmount } = await mountPage();
    preferences.theme.value = theme;
    await measuredClip(session);
    for (const step of STEPS) {
      desk.step.value = step;
      await expect.element(page.getByRole('heading', { level: 2, name: step })).toBeVisible();
      const { violations } = await axe.run(host, {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'],
      });
      const problems = violations.flatMap(({ id, nodes }) =>
        nodes.map(({ html, failureSummary }) => `${step}: ${id}: ${html}: ${failureSummary}`),
      );
      expect(problems).toEqual([]);
    }
    unmount();
  });
});
