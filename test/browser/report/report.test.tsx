import { csvParse } from 'd3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { validateResult } from '../../../src/shot/parseResult';
import { findingsIn } from '../ui/accessibility';
import { type MountedPage, measuredClip, mountPage } from '../ui/mountPage';

/** A name that is markup, breaks out of attributes and would be a formula in a spreadsheet. */
const NASTY = `=<img src=x onerror="window.broken=1">'"&</style><script>window.broken=1</script>`;

let mounted: MountedPage;
/** What was saved, in order. */
let saved: { name: string; data: string | Blob }[];

beforeEach(async () => {
  mounted = await mountPage();
  mounted.crew.scenery.stillScene = async () => {
    throw new Error('There is no scene here.');
  };
  saved = [];
  Object.assign(window, {
    showSaveFilePicker: async ({ suggestedName }: { suggestedName: string }) => ({
      createWritable: async () => ({
        write: async (data: string | Blob) => void saved.push({ name: suggestedName, data }),
        close: async () => {},
      }),
    }),
  });
});
afterEach(() => {
  mounted.unmount();
  Reflect.deleteProperty(window, 'showSaveFilePicker');
});

const report = () => page.getByRole('main');

async function reportOf(name: string | null) {
  const { session, desk } = mounted;
  await measuredClip(session);
  if (name !== null) {
    session.shots.edit((draft) => ({ ...draft, name }), { label: 'name' });
    await session.measure();
  }
  desk.step.value = 'result';
  await page.getByRole('button', { name: 'Report…' }).click();
  await expect.element(report().getByText('nearest to the exit')).toBeVisible();
}

async function save(button: string): Promise<string | Blob> {
  const before = saved.length;
  await report().getByRole('button', { name: button, exact: true }).first().click();
  await expect.poll(() => saved.length).toBe(before + 1);
  return saved[before]?.data ?? '';
}
const savedText = async (button: string) => String(await save(button));

describe('the report', () => {
  it('states the result, shows the key frames and leads back to the shot', async () => {
    await reportOf(null);
    await expect
      .element(report().getByText(/left the muzzle at 40\.123 m\/s, with a standard uncertainty/))
      .toBeVisible();
    const captions = [...mounted.host.querySelectorAll('.key-frame figcaption')];
    expect(captions.map((one) => one.textContent)).toEqual([
      'Frame 1, last with the seal whole',
      'Frame 2, first with the seal open',
      'Frame 3, nearest to the exit',
    ]);
    await expect.element(report().getByText('Only ten frames carry the fit.')).toBeVisible();
    // The remedy is in the full report.
    await expect.element(report().getByText(/Film at a higher rate/)).not.toBeInTheDocument();
    await report().getByRole('button', { name: 'Full report' }).click();
    await expect.element(report().getByText(/Film at a higher rate/)).toBeVisible();
    await expect.element(report().getByRole('heading', { name: 'What was stated' })).toBeVisible();
    await report().getByRole('button', { name: 'Back to the shot' }).click();
    await expect.element(page.getByRole('heading', { level: 2, name: 'Result' })).toBeVisible();
  });

  it('stays in the inputs it was measured with, and says so, while they change', async () => {
    await reportOf(null);
    await report().getByRole('button', { name: 'Full report' }).click();
    const { session } = mounted;
    mounted.crew.conclude = () => new Promise(() => {});
    session.shots.edit((draft) => ({ ...draft, seed: 99 }), { label: 'seed' });
    await expect.element(report().getByText(/Inputs changed since/)).toBeVisible();
    await expect.element(report().getByText('"seed": 1', { exact: false })).toBeVisible();
  });

  it('says so where nothing was measured', async () => {
    mounted.desk.place.value = 'report';
    await expect.element(report().getByText(/Nothing has been measured yet/)).toBeVisible();
  });

  it('gives the reason where the film cannot be read any more', async () => {
    mounted.crew.film.frame = async () => {
      throw new Error('The clip is gone.');
    };
    const { session, desk } = mounted;
    await measuredClip(session);
    desk.place.value = 'report';
    await expect.element(report().getByText('The clip is gone.')).toBeVisible();
    await expect.element(report().getByText(/left the muzzle at/)).toBeVisible();
  });

  it('meets the checkable success criteria of WCAG 2.2, light and dark', async () => {
    await reportOf(null);
    for (const extent of ['One page', 'Full report']) {
      await report().getByRole('button', { name: extent }).click();
      for (const theme of ['light', 'dark'] as const) {
        mounted.preferences.theme.value = theme;
        await expect.poll(() => document.documentElement.dataset.theme).toBe(theme);
        expect(await findingsIn(mounted.host), `${extent}, ${theme}`).toEqual([]);
      }
    }
  });
});

describe('what is saved of it', () => {
  it('is a page in which markup in a name is text, and which may fetch nothing', async () => {
    await reportOf(NASTY);
    await report().getByRole('button', { name: 'Full report' }).click();
    const text = await savedText('Save as web page…');
    const read = new DOMParser().parseFromString(text, 'text/html');
    expect(read.querySelector('.report-title')?.textContent).toBe(NASTY);
    expect(read.title).toBe(`${NASTY} report`);
    expect(read.querySelectorAll('script, img, link, iframe, [onerror]')).toHaveLength(0);
    expect(read.querySelector('meta[http-equiv]')?.getAttribute('content')).toContain(
      "default-src 'none'",
    );
    // Key frames are in it, nothing for the screen is.
    const pictures = [...read.querySelectorAll('image')].map((one) => one.getAttribute('href'));
    expect(pictures).toHaveLength(3);
    for (const href of pictures) expect(href).toMatch(/^data:image\/png;base64,/);
    expect(read.querySelectorAll('button, [data-screen-only]')).toHaveLength(0);
    expect(read.querySelectorAll('svg.plot-chart').length).toBeGreaterThan(3);
    expect('broken' in window).toBe(false);
  });

  it('are tables another reader takes, with the formula in a name disarmed', async () => {
    await reportOf(NASTY);
    const [row] = csvParse(await savedText('Result CSV…'));
    expect(row?.shot).toBe(`'${NASTY}`);
    expect(Number(row?.['exit velocity, m/s'])).toBe(40.123);
    expect(csvParse(await savedText('Centres CSV…'))).toHaveLength(10);
    expect(csvParse(await savedText('Budget CSV…'))).toHaveLength(2);
    // The name's markup does not reach the file name.
    expect(saved[0]?.name).toMatch(/^[\p{L}\p{N}._-]+\.result\.csv$/u);
  });

  it('is the result file', async () => {
    await reportOf(null);
    const parsed = validateResult(JSON.parse(await savedText('Result JSON…')));
    expect(parsed.ok && parsed.value.shot).toBe('clip');
  });

  it('are figures that need no style sheet, in which every text of the figure stands', async () => {
    await reportOf(null);
    // The first figure is the key frames, the second the position.
    const first = report().getByRole('button', { name: 'Save SVG…' });
    await first.nth(1).click();
    await expect.poll(() => saved.length).toBe(1);
    const text = String(saved[0]?.data);
    const drawing = new DOMParser().parseFromString(text, 'image/svg+xml');
    expect(drawing.querySelector('parsererror')).toBeNull();
    expect(text).not.toMatch(/class=|var\(|color-mix|color\(/);
    const words = [...drawing.querySelectorAll('text')].map((one) => one.textContent);
    for (const word of ['Position', 'distance from the muzzle plane, mm', 'muzzle zone']) {
      expect(words).toContain(word);
    }
    const hues = new Set(
      [...drawing.querySelectorAll('circle')].map((one) => one.getAttribute('fill')),
    );
    expect([...hues].every((hue) => hue !== null && /^#[0-9a-f]{6}$/.test(hue))).toBe(true);
  });

  it('are figures as pictures, of the size they have on the page, three pixels for one', async () => {
    await reportOf(null);
    const png = await save('Save PNG…');
    if (!(png instanceof Blob)) throw new Error('a picture is saved as it is');
    const picture = await createImageBitmap(png);
    const drawn = mounted.host.querySelector('.report-drawing')?.getBoundingClientRect();
    expect(Math.abs(picture.width / 3 - ((drawn?.width ?? 0) + 24))).toBeLessThanOrEqual(1);
    // It is not blank: the film is in it.
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const context = canvas.getContext('2d');
    context?.drawImage(picture, 0, 0);
    const { data = [] } = context?.getImageData(0, 60, picture.width, 1) ?? {};
    expect(new Set(Array.from(data)).size).toBeGreaterThan(2);
  });
});
