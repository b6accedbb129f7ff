import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { STEPS } from '../../../src/app/draft';
import { ExitframeError } from '../../../src/core/reason';
import { exampleSeries, seriesFiles } from '../../fixtures/series';
import { findingsIn } from './accessibility';
import { type MountedPage, measuredClip, mountPage, openClip } from './mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
});
afterEach(() => mounted.unmount());

const FAULT = new ExitframeError('noBall', 'No ball was found in the film.', 'Widen the region.');

/** Every state of the page that a person meets, brought about over a crew without threads. */
const STATES: Readonly<Record<string, () => Promise<void> | void>> = {
  'nothing open': () => {},
  'help and cautions': async () => {
    await openClip(mounted.session);
    mounted.desk.helpOpen.value = true;
    mounted.desk.cautionsOpen.value = true;
  },
  'a clip that needs inputs': () => openClip(mounted.session),
  'a problem in every step': async () => {
    await openClip(mounted.session);
    for (const step of STEPS) mounted.session.notices.report(step, FAULT);
  },
  'a measurement that failed': async () => {
    mounted.crew.conclude = () => Promise.reject(FAULT);
    await measuredClip(mounted.session);
  },
  'work that is not kept': async () => {
    await measuredClip(mounted.session);
    mounted.session.keeping.problem.value = FAULT;
  },
  'a measured shot': () => measuredClip(mounted.session),
};

/**
 * CSS px: a desk, a desk at 200 % (WCAG 1.4.4), and the width at which nothing may scroll two ways (1.4.10). Colours do
 * not hang on the width.
 */
const LOOKS = [
  { theme: 'light', width: 1280 },
  { theme: 'light', width: 640 },
  { theme: 'light', width: 320 },
  { theme: 'dark', width: 1280 },
] as const;
type Look = (typeof LOOKS)[number];

async function take({ width, theme }: Look): Promise<void> {
  mounted.preferences.theme.value = theme;
  await page.viewport(width, 900);
  await expect.poll(() => document.documentElement.dataset.theme).toBe(theme);
}

/** Nothing wider than the page, but what scrolls by itself. */
const overflow = () => document.documentElement.scrollWidth - document.documentElement.clientWidth;

describe.each(LOOKS)('$theme, $width px wide', (look) => {
  it.each(Object.keys(STATES))('%s, in every step', async (state) => {
    await STATES[state]?.();
    await take(look);
    for (const step of STEPS) {
      mounted.desk.step.value = step;
      await expect.element(page.getByRole('heading', { level: 2, name: step })).toBeVisible();
      expect(await findingsIn(mounted.host), step).toEqual([]);
      expect(overflow(), step).toBeLessThanOrEqual(0);
    }
  });

  it.each(['report', 'notebook', 'plan'] as const)('%s, empty and filled', async (place) => {
    const { desk, session } = mounted;
    await take(look);
    for (const filled of [false, true]) {
      if (filled) {
        await measuredClip(session);
        await session.notebook.add(seriesFiles(exampleSeries(12)));
      }
      desk.place.value = place;
      await expect.element(page.getByRole('main')).toBeVisible();
      if (place === 'plan')
        await expect.poll(() => session.planning.judgement.value).not.toBeNull();
      for (const fold of document.querySelectorAll('main details')) fold.setAttribute('open', '');
      expect(await findingsIn(mounted.host), `filled: ${filled}`).toEqual([]);
      expect(overflow(), `filled: ${filled}`).toBeLessThanOrEqual(0);
    }
  });
});
