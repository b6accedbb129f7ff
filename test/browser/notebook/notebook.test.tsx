import { proxy, wrap } from 'comlink';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { fromCsv } from '../../../src/app/notebookCsv';
import type { SeriesFitQuestion } from '../../../src/compare/seriesCurve';
import { failure, success } from '../../../src/core/reason';
import type { CurveQuestion } from '../../../src/launch/speedCurve';
import type { SeriesApi } from '../../../src/protocol/series';
import { exampleSeries, seriesFiles } from '../../fixtures/series';
import { findingsIn } from '../ui/accessibility';
import { type MountedPage, measuredClip, mountPage } from '../ui/mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
  mounted.desk.cautionsOpen.value = false;
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
});
afterEach(() => mounted.unmount());

const book = () => page.getByRole('main', { name: 'Notebook' });
const table = () => book().getByRole('region', { name: 'Shots', exact: true });
const rowNames = () =>
  [...document.querySelectorAll('.notebook-table tbody th')].map((one) => one.textContent);
const input = (role: string) =>
  page.elementLocator(document.querySelector(`[data-role=${role}]`) as HTMLElement);
const add = (files: File[]) => input('notebook-files').upload(files);
const SHOTS = exampleSeries(12);

describe('the notebook', () => {
  it('says what it is for while it is empty', async () => {
    await expect.element(book().getByText('Many shots side by side')).toBeVisible();
    await expect.element(book().getByRole('button', { name: 'Save notebook' })).toBeDisabled();
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await expect.element(page.getByRole('navigation', { name: 'Steps' })).toBeVisible();
  });

  it('reads shots with their results, sorts and filters them', async () => {
    await add(seriesFiles(SHOTS));
    await expect.element(book().getByText('12 shots read.')).toBeVisible();
    await expect.poll(() => rowNames().length).toBe(12);
    await table().getByRole('button', { name: 'Exit velocity' }).click();
    const slowest = [...SHOTS].sort(
      (a, b) => speedOf(a.result.exitVelocity) - speedOf(b.result.exitVelocity),
    )[0];
    await expect.poll(() => rowNames()[0]).toBe(slowest?.shot.name);
    const head = table().getByRole('columnheader', { name: 'Exit velocity' });
    await expect.element(head).toHaveAttribute('aria-sort', 'ascending');
    await table().getByRole('button', { name: 'Exit velocity' }).click();
    await expect.poll(() => rowNames().at(-1)).toBe(slowest?.shot.name);
    await book().getByLabelText('Only shots whose name').fill('second');
    await expect.poll(() => rowNames().length).toBe(6);
    await expect.element(book().getByText('6 of 12 shots shown, 6 of them counted.')).toBeVisible();
  });

  it('sums up by group, without the shots that do not count', async () => {
    await add(seriesFiles(SHOTS));
    await book().getByLabelText('Grouped by').selectOptions('barrel length');
    const group = book().getByRole('row', { name: /^barrel 0.8 m 4 / });
    await expect.element(group).toBeVisible();
    await table().getByLabelText(`Count ${SHOTS[0]?.shot.name}`).click();
    await expect.element(book().getByRole('row', { name: /^barrel 0.8 m 3 / })).toBeVisible();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.element(group).toBeVisible();
  });

  it('names what could not be read', async () => {
    await add([...seriesFiles(SHOTS.slice(0, 2)), new File(['{'], 'cut.shot.json')]);
    await expect.element(book().getByText('2 shots read.')).toBeVisible();
    await expect.element(book().getByText('1 file with a problem')).toBeVisible();
    await expect.element(book().getByText('cut.shot.json')).toBeVisible();
    await add([new File(['shot\n'], 'bare.csv')]);
    await expect.element(book().getByText('The table has no row below its header.')).toBeVisible();
    expect(mounted.session.notebook.entries.value).toHaveLength(2);
  });

  it('comes back from its own file and from its table', async () => {
    const { notebook } = mounted.session;
    await add(seriesFiles(SHOTS));
    await expect.poll(() => notebook.entries.value.length).toBe(12);
    const saved = JSON.stringify(notebook.file());
    const before = notebook.entries.value;
    notebook.undo();
    expect(notebook.entries.value).toEqual([]);
    await add([new File([saved], 'april.notebook.json')]);
    await expect.poll(() => notebook.entries.value).toEqual(before);
    await add([new File([saved], 'april.notebook.json')]);
    await expect
      .element(book().getByText('12 shots read; 12 took the place of one of the same name.'))
      .toBeVisible();
  });

  it('writes the rows shown into a table', async () => {
    const written: { name: string; text: string }[] = [];
    Object.assign(window, {
      showSaveFilePicker: async ({ suggestedName }: { suggestedName: string }) => ({
        createWritable: async () => ({
          write: async (text: string) => void written.push({ name: suggestedName, text }),
          close: async () => {},
        }),
      }),
    });
    await add(seriesFiles(SHOTS));
    await book().getByLabelText('Only shots whose name').fill('second');
    await book().getByRole('button', { name: 'Save table' }).click();
    await expect.poll(() => written.length).toBe(1);
    expect(written[0]?.name).toBe('shots.csv');
    expect(fromCsv(written[0]?.text ?? '').entries).toHaveLength(6);
    await book().getByRole('button', { name: 'Save notebook' }).click();
    await expect.poll(() => written.length).toBe(2);
    await expect.element(book().getByText('not saved to a file')).not.toBeInTheDocument();
    Reflect.deleteProperty(window, 'showSaveFilePicker');
  });

  it('keeps few of 2000 rows in the page, and shows those scrolled to', async () => {
    await add(seriesFiles(exampleSeries(2000)));
    await expect.element(book().getByText('2000 shots read.')).toBeVisible();
    await expect.poll(() => rowNames().length).toBeLessThan(60);
    await expect.element(table().getByRole('table')).toHaveAttribute('aria-rowcount', '2001');
    const box = table().element();
    box.scrollTop = box.scrollHeight;
    await expect.poll(() => rowNames().at(-1)).toBe('2031-04-18 2000');
    expect(rowNames().length).toBeLessThan(60);
    // Rows stand where their number says: the middle of the table is the middle of the list.
    box.scrollTop = (box.scrollHeight - box.clientHeight) / 2;
    await expect.poll(() => rowNames()).toContain('2031-04-18 1000');
  });

  it('draws the shots, and a model beside them for a launcher that is known', async () => {
    const asked: CurveQuestion[] = [];
    mounted.crew.modeller = {
      ...mounted.crew.modeller,
      async curve(question) {
        asked.push(question);
        return question.values.map((at) => ({
          at,
          speed: {
            value: 100 * at,
            u: 1,
            interval: [100 * at - 2, 100 * at + 2],
            coverage: 0.95,
            dof: null,
          },
        }));
      },
    };
    await add(seriesFiles(SHOTS));
    await book().getByRole('button', { name: 'Draw its curve' }).click();
    const figure = book().getByRole('figure');
    await expect
      .element(figure.getByText('Gas dynamics, launcher of 2031-04-18 0001').first())
      .toBeVisible();
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatchObject({
      model: 'gasDynamics',
      what: 'barrelLength',
      launcher: { boreDiameter: 0.031, residualPressure: 500 },
    });
    expect(asked[0]?.values[0]).toBeCloseTo(0.74, 9);
    expect(asked[0]?.values.at(-1)).toBeCloseTo(1.46, 9);
    const marks = document.querySelector('.plot-exit .plot-exit-mark, .plot-exit-mark');
    expect(marks?.getAttribute('d')?.match(/M/g)).toHaveLength(12);
    await book().getByLabelText('Drawn against').selectOptions('residual pressure');
    await expect
      .element(figure.getByText('Gas dynamics, launcher').first())
      .not.toBeInTheDocument();
  });

  it('opens the film of a shot, and asks for footage that is not at hand', async () => {
    await add([...seriesFiles(SHOTS.slice(0, 2)), new File(['film'], 'clip1.mp4')]);
    const open = (name: string | undefined) =>
      book().getByRole('button', { name: `Open the film of ${name}` });
    await open(SHOTS[0]?.shot.name).click();
    await expect.poll(() => mounted.crew.opened).toEqual(['clip1.mp4']);
    expect(mounted.session.shots.draft.value?.name).toBe(SHOTS[0]?.shot.name);
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await open(SHOTS[1]?.shot.name).click();
    await expect.poll(() => mounted.session.awaited.value?.path).toBe('clip2.mp4');
    await expect.element(page.getByText('clip2.mp4').first()).toBeVisible();
  });

  it('takes the shot that is open, with its result', async () => {
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await measuredClip(mounted.session);
    mounted.desk.step.value = 'result';
    await page.getByRole('button', { name: 'Add to notebook' }).click();
    await expect.element(book().getByText('1 shot read.')).toBeVisible();
    expect(mounted.session.notebook.entries.value[0]).toMatchObject({
      name: 'clip',
      exitVelocity: { value: 40.123 },
      shot: { footage: { path: 'clip.mp4' } },
    });
  });

  it.each(['light', 'dark'] as const)('meets the checkable success criteria, %s', async (theme) => {
    mounted.preferences.theme.value = theme;
    await add(seriesFiles(SHOTS));
    await table().getByLabelText(`Count ${SHOTS[0]?.shot.name}`).click();
    await expect.element(book().getByRole('row', { name: /^all shots 11 / })).toBeVisible();
    expect(await findingsIn(mounted.host)).toEqual([]);
  });
});

describe('the thread of the notebook', () => {
  it('reads files and sums them up', async () => {
    const worker = new Worker(new URL('../../../workers/series.worker.ts', import.meta.url), {
      type: 'module',
    });
    const api = wrap<SeriesApi>(worker);
    const { entries, problems } = await api.read(
      seriesFiles(SHOTS).map((file) => ({ path: file.name, blob: file })),
      proxy(() => undefined),
    );
    expect(problems).toEqual([]);
    expect(entries).toHaveLength(12);
    const [all] = await api.summarise([entries.map(({ entry }) => entry)], 0.95);
    expect(all?.report.ok && all.report.value.consistency.dof).toBe(11);
    worker.terminate();
  });
});

const speedOf = (reported: (typeof SHOTS)[number]['result']['exitVelocity']) =>
  'value' in reported ? reported.value : Number.NaN;

describe('inputs fitted to the shots', () => {
  const fitSection = () => book().getByRole('region', { name: 'Fit the launcher to the shots' });

  it('asks with what is free and counted, and shows values with correlations', async () => {
    const asked: SeriesFitQuestion[] = [];
    const at = (value: number, u: number) => ({
      ...{ value, u, coverage: 0.95, dof: null },
      interval: [value - 2 * u, value + 2 * u] as const,
    });
    mounted.crew.modeller = {
      ...mounted.crew.modeller,
      async fit(question) {
        asked.push(question);
        return success({
          parameters: [
            {
              ...{ key: 'gapDischarge', source: 'discharge of the gap', unit: '' },
              ...{ shift: at(-0.15, 0.02), value: at(0.55, 0.02) },
            },
            {
              ...{ key: 'residualPressure', source: 'residual pressure', unit: 'Pa' },
              ...{ shift: at(120, 40), value: null },
            },
          ],
          correlations: [
            [1, -0.42],
            [-0.42, 1],
          ],
          ...{ observations: 22, chiSquare: 18.5, dof: 20, birgeRatio: 0.962, probability: 0.55 },
          pulls: [{ source: 'ball mass', inU: -1.2 }],
          warnings: [],
        });
      },
    };
    await add([...seriesFiles(SHOTS), new File([TABLE], 'more.csv')]);
    await table().getByLabelText(`Count ${SHOTS[0]?.shot.name}`).click();
    await fitSection().getByLabelText('residual pressure').click();
    await fitSection().getByRole('button', { name: 'Fit', exact: true }).click();
    await expect.element(fitSection().getByText('0.550 ± 0.040')).toBeVisible();
    expect(asked[0]).toMatchObject({
      model: 'gasDynamics',
      free: ['gapDischarge', 'residualPressure'],
    });
    expect(asked[0]?.shots).toHaveLength(11);
    expect(asked[0]?.shots[0]).toMatchObject({ speed: { u: 0.4 }, lead: { value: 1.3e-4 } });
    await expect.element(fitSection().getByText('differs by shot')).toBeVisible();
    await expect.element(fitSection().getByText('−0.42').first()).toBeVisible();
    await expect
      .element(fitSection().getByText('ball mass by −1.2 of its uncertainty'))
      .toBeVisible();
    await expect
      .element(fitSection().getByText('1 counted shot states no whole launcher'))
      .toBeVisible();
    await expect.element(fitSection().getByText('Predictions are for study only')).toBeVisible();
    const stale = fitSection().getByText('fit again');
    expect(stale.query()).toBeNull();
    await table().getByLabelText(`Count ${SHOTS[1]?.shot.name}`).click();
    await expect.element(stale).toBeVisible();
  });

  it('says why there is no fit, and needs something free', async () => {
    mounted.crew.modeller = {
      ...mounted.crew.modeller,
      fit: async () => failure('fitNotSettled', 'The fit did not settle.', 'Free other inputs.'),
    };
    await add(seriesFiles(SHOTS));
    const start = fitSection().getByRole('button', { name: 'Fit', exact: true });
    await start.click();
    await expect.element(fitSection().getByRole('alert')).toHaveTextContent('did not settle');
    await fitSection().getByLabelText('discharge of the gap').click();
    await expect.element(start).toBeDisabled();
  });
});

const TABLE = 'shot,"exit velocity, m/s","u of exit velocity, m/s"\nby hand,140,2\n';
