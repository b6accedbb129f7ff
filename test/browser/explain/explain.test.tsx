import axe from 'axe-core';
import { describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { STEPS } from '../../../src/app/draft';
import { mistakes } from '../../../src/app/mistakes';
import { createPreferences } from '../../../src/app/preferences';
import { speak } from '../../../src/text/text';
import { measuredClip, mountPage, openClip } from '../ui/mountPage';

const panel = () => page.getByText('What this step works out');

/** The matchers for what is visible take no MathML. */
const formulaShown = (named: { name?: string | RegExp; exact?: boolean } = {}) =>
  expect
    .poll(() =>
      page
        .getByRole('math', named)
        .elements()
        .map((one) => one.getClientRects().length),
    )
    .toContain(1);

async function seriousFindings(host: HTMLElement): Promise<string[]> {
  const { violations } = await axe.run(host, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'],
  });
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}

describe('the explanation of a step', () => {
  it('is folded away at first, and stays as it was left', async () => {
    const { host, unmount } = await mountPage();
    expect(host.querySelector('.explain math')).toBeNull();
    await panel().click();
    await formulaShown();
    expect(createPreferences(localStorage).explainOpen.value).toBe(true);
    unmount();
  });

  it('puts the shot’s own numbers into the formula, with their uncertainties', async () => {
    const { session, desk, preferences, unmount } = await mountPage();
    preferences.explainOpen.value = true;
    await measuredClip(session);
    desk.step.value = 'clock';
    await formulaShown({ name: 'Δt = 1 / f = 1 / (12 000.00 /s) = 83.3333 µs' });
    await expect.element(page.getByText('12 000.00 ± 0.60 /s').first()).toBeVisible();
    desk.step.value = 'result';
    // 0 to 9 frames on at 40 m/s, as the fake crew has it.
    await formulaShown({
      name: /= \(30\.000 mm − 0\.000 mm\) \/ \(0\.75 ms − 0 ms\) = 40\.0/,
    });
    unmount();
  });

  it('keeps the letters of what is not known, and says what is missing and which step gives it', async () => {
    const { session, desk, preferences, unmount } = await mountPage();
    preferences.explainOpen.value = true;
    await openClip(session);
    desk.step.value = 'clock';
    await formulaShown({ name: 'Δt = 1 / f', exact: true });
    await expect.element(page.getByText('Still missing: recording rate')).toBeVisible();
    desk.step.value = 'seal';
    await expect.element(page.getByText('not known yet: step Result').first()).toBeVisible();
    unmount();
  });

  it('has no finding of the accessibility check in any step, nor shows what is no number', async () => {
    const { host, session, desk, preferences, unmount } = await mountPage();
    preferences.explainOpen.value = true;
    await measuredClip(session);
    for (const step of STEPS) {
      desk.step.value = step;
      await formulaShown();
      expect(host.querySelector('.explain')?.textContent).not.toMatch(
        /NaN|Infinity|undefined|no value/,
      );
      expect(await seriousFindings(host)).toEqual([]);
    }
    unmount();
  });
});

describe('the page of mistakes', () => {
  it.each(['light', 'dark'] as const)('meets the checkable criteria, %s', async (theme) => {
    const { host, desk, preferences, unmount } = await mountPage();
    preferences.theme.value = theme;
    desk.place.value = 'mistakes';
    for (const { name } of mistakes) {
      await expect
        .element(page.elementLocator(host).getByText('Size of the error').first())
        .toBeVisible();
      const row = host.querySelector(`[data-mistake=${name}]`)?.textContent ?? '';
      expect(row).toMatch(/found: [+−×]\s?[\d.]+.*by formula: [+−×]\s?[\d.]+/);
    }
    for (const image of host.querySelectorAll('image')) {
      expect(image.getAttribute('href')).not.toBe('');
    }
    expect(await seriousFindings(host)).toEqual([]);
    unmount();
  });

  it('is there in every language, with the decimal comma where that is used', async () => {
    const { host, desk, unmount } = await mountPage();
    desk.place.value = 'mistakes';
    for (const [language, found] of [
      ['de', '−16,7'],
      ['fr', '−16,7'],
      ['es', '−16,7'],
      ['en', '−16.7'],
    ] as const) {
      await speak(language);
      await expect
        .poll(() => host.querySelector('[data-mistake=wrongRate]')?.textContent)
        .toContain(found);
    }
    unmount();
  });
});
