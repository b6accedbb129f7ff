import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { changeLauncher, setBall, stateLauncher } from '../../../src/app/edits';
import type { ComparisonQuestion } from '../../../src/compare/compareModels';
import { ExitframeError } from '../../../src/core/reason';
import { comparisonParts } from '../../fixtures/comparison';
import { findingsIn } from '../ui/accessibility';
import { type MountedPage, measuredClip, mountPage, openClip } from '../ui/mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
  mounted.desk.cautionsOpen.value = false;
});
afterEach(() => mounted.unmount());

function state(pressures: { residualPressure?: number; sealBurstPressure?: number }) {
  const { shots } = mounted.session;
  shots.edit(stateLauncher({ value: 0.031, u: 5e-5 }, { value: 1.4, u: 1e-3 }), { label: 'bore' });
  for (const [key, value] of Object.entries(pressures)) {
    shots.edit(changeLauncher({ [key]: { value, u: 0.1 * value } }), { label: key });
  }
}

/** The modelling thread gives canned answers. */
const answering = (asked: ComparisonQuestion[] = []) => {
  mounted.crew.modeller = {
    ...mounted.crew.modeller,
    async compare(question, onPart, onShare) {
      asked.push(question);
      comparisonParts().forEach((part, i, all) => {
        onPart(part);
        onShare((i + 1) / all.length);
      });
    },
  };
};

const sheet = () => page.getByRole('complementary');
const view = () => page.getByRole('region', { name: 'Film against model' });
const predict = () => sheet().getByRole('button', { name: 'Predict' });

async function predicted() {
  await measuredClip(mounted.session);
  state({ residualPressure: 1000, sealBurstPressure: 5000 });
  answering();
  mounted.desk.step.value = 'models';
  await predict().click();
  await expect.element(view().getByRole('heading', { name: 'What would have' })).toBeVisible();
}

describe('film against model', () => {
  it('says what it needs, and makes a launcher of bore and length', async () => {
    mounted.desk.step.value = 'models';
    await expect.element(view().getByText('Open footage first.')).toBeVisible();
    await openClip(mounted.session);
    await expect.element(view().getByText('State the launcher in the sheet')).toBeVisible();
    await expect.element(predict()).not.toBeInTheDocument();
    await page.getByLabelText('Bore diameter').fill('31');
    await userEvent.keyboard('{Enter}');
    expect(mounted.session.shots.draft.value?.launcher).toBeNull();
    await page.getByLabelText('Barrel length, seal to seal').fill('1.4');
    await userEvent.keyboard('{Enter}');
    expect(mounted.session.shots.draft.value?.launcher).toMatchObject({
      boreDiameter: { value: 0.031 },
      barrelLength: { value: 1.4 },
      residualPressure: null,
      gapDischarge: { value: 0.7, u: 0.15 },
    });
    await predict().click();
    await expect.element(sheet().getByText('The pressure left in the barrel')).toBeVisible();
    expect(mounted.crew.modellers.started).toBe(0);
  });

  it('takes pressures typed in the sheet, and asks the models about the film', async () => {
    const asked: ComparisonQuestion[] = [];
    await measuredClip(mounted.session);
    state({});
    answering(asked);
    mounted.desk.step.value = 'models';
    for (const [label, text] of [
      ['Residual pressure', '10 hPa'],
      ['Seal burst pressure', '5 kPa'],
    ] as const) {
      await sheet().getByLabelText(label).fill(text);
      await userEvent.keyboard('{Enter}');
    }
    await predict().click();
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatchObject({
      launcher: { boreDiameter: 0.031, residualPressure: 1000, sealBurstPressure: 5000 },
      measured: { speed: { value: 40.123 }, lead: { value: 1.3e-4 } },
    });
    expect(mounted.crew.modellers).toEqual({ started: 1, ended: 1 });
  });

  it('shows speeds with differences, zeta and meaning', async () => {
    await predicted();
    const row = view()
      .getByRole('row', { name: /^Gas dynamics/ })
      .first();
    await expect.element(row).toHaveTextContent(/197.9 ± 1.7 m\/s/);
    await expect.element(row).toHaveTextContent('differ');
    await expect
      .element(page.elementLocator(document.querySelector('[data-role=model-verdict]') as Element))
      .toHaveTextContent(/standard uncertainties apart/);
    await expect.element(view().getByText('Predictions are for study only')).toBeVisible();
    await expect.element(view().getByText('Ayars and Buchholtz').first()).toBeVisible();
  });

  it('tells which input would have to be wrong, model by model', async () => {
    await predicted();
    const mass = view()
      .getByRole('row', { name: /^ball mass/ })
      .first();
    const byGas = mass.element().textContent;
    await view().getByLabelText('By the model').selectOptions('Constant force');
    expect(mass.element().textContent).not.toBe(byGas);
    await view().getByLabelText('By the model').selectOptions('Gas dynamics');
  });

  it('draws the film among the models, and the gas with its shocks', async () => {
    await predicted();
    const figures = view().getByRole('figure');
    await expect.poll(() => figures.elements().length).toBe(3);
    const [speed, seal, gas] = figures.elements() as HTMLElement[];
    expect(speed?.querySelectorAll('.plot-look-band')).toHaveLength(4);
    expect(speed?.querySelector('.plot-exit-mark')?.getAttribute('d')).toMatch(/^M[\d.]+ [\d.]+l/);
    expect(seal?.querySelectorAll('.plot-look-foot')).toHaveLength(3);
    expect(seal?.querySelector('.plot-instant-burst')).not.toBeNull();
    expect(gas?.querySelectorAll('circle.plot-shock, .plot-shock circle').length).toBeGreaterThan(
      20,
    );
    expect(gas?.querySelector('image')?.getAttribute('href')).toMatch(/^data:image\/png/);
  });

  it('tells of progress, and is cancelled without a word lost', async () => {
    await measuredClip(mounted.session);
    state({ residualPressure: 1000, sealBurstPressure: 5000 });
    mounted.crew.modeller = {
      ...mounted.crew.modeller,
      compare: (_question, onPart, onShare) => {
        const [first] = comparisonParts();
        if (first !== undefined) onPart(first);
        onShare(0.25);
        return new Promise(() => undefined);
      },
    };
    mounted.desk.step.value = 'models';
    await predict().click();
    await expect.element(sheet().getByText('Running the models: 25 %')).toBeVisible();
    await expect.element(view().getByText('being worked out').first()).toBeVisible();
    await sheet().getByRole('button', { name: 'Cancel' }).click();
    await expect.element(sheet().getByText('Cancelled: not every model is done.')).toBeVisible();
    await expect
      .element(
        view()
          .getByRole('row', { name: /^Constant force/ })
          .first(),
      )
      .toBeVisible();
    expect(mounted.crew.modellers).toEqual({ started: 1, ended: 1 });
  });

  it('says why there is no prediction', async () => {
    await openClip(mounted.session);
    state({ residualPressure: 1000, sealBurstPressure: 5000 });
    mounted.crew.modeller = {
      ...mounted.crew.modeller,
      compare: async () => {
        throw new ExitframeError('badLauncher', 'The ball is wider than the bore.', 'Check both.');
      },
    };
    mounted.desk.step.value = 'models';
    await predict().click();
    await expect
      .element(sheet().getByRole('alert'))
      .toHaveTextContent('The ball is wider than the bore. Check both.');
  });

  it('marks what was said before the launcher changed, and forgets it with the film', async () => {
    await predicted();
    mounted.session.shots.edit(setBall({ mass: { value: 0.002, u: 1e-5 } }), { label: 'mass' });
    await expect.element(view().getByText('predict again')).toBeVisible();
    await expect.element(sheet().getByText('changed after the models were run')).toBeVisible();
    mounted.session.shots.undo();
    await expect.element(view().getByText('predict again')).not.toBeInTheDocument();
    await openClip(mounted.session);
    await expect.element(view().getByText('State the launcher in the sheet')).toBeVisible();
  });

  it.each(['light', 'dark'] as const)('meets the checkable success criteria, %s', async (theme) => {
    mounted.preferences.theme.value = theme;
    await predicted();
    expect(await findingsIn(mounted.host)).toEqual([]);
  });
});
