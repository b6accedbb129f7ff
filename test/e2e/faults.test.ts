import { mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page, Route } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { footageFile, nodePlatform } from '../../src/footage/node';
import { openFootage } from '../../src/footage/open';
import { type OpenTool, openTool } from './tool';

/*
 * What can go wrong while a film is measured. Each time: nothing typed or measured is lost, the page says in its own
 * language what is wrong and what to do, and once the cause is gone the same button gives the same numbers.
 */

const SAMPLE = 'sample-clips/a-clean';
const LONG = { timeout: 240_000 };

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'faults-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

async function german(): Promise<OpenTool> {
  const tool = await openTool({ locale: 'de-DE' });
  tool.page.setDefaultTimeout(LONG.timeout);
  return tool;
}

const figure = (page: Page, step: string) => page.locator(`[data-step=${step}] .step-figure`);
const told = (page: Page, code: string) => page.locator(`[data-code=${code}]`).first();
const measureButton = (page: Page) => page.locator('button.measure');

async function showsFilm(page: Page, name = 'clip.mp4'): Promise<void> {
  await page
    .getByText(new RegExp(`^Bild \\d+ von ${name}`))
    .first()
    .waitFor({ state: 'attached', ...LONG });
}

/** The shot file of the sample for a film that was not hashed. */
function shotFor(film: string, reading?: object) {
  const shot = JSON.parse(readFileSync(`${SAMPLE}/a-clean.shot.json`, 'utf8'));
  shot.footage = { path: film, sha256: null, ...(reading && { reading }) };
  const file = join(folder, `${film}.shot.json`);
  writeFileSync(file, JSON.stringify(shot));
  return file;
}

/** Opens files with an edit made, the ball's step on the screen. */
async function opened(page: Page, files: readonly string[], name: string): Promise<void> {
  await showsFilm(page);
  await page.locator('input[data-role=files]').setInputFiles([...files]);
  await showsFilm(page, name);
  await edited(page);
}

async function edited(page: Page): Promise<void> {
  await page.locator('[data-step=clock]').click();
  await page.getByLabel('Bildrate der Aufnahme').first().fill('11000');
  await page.keyboard.press('Enter');
  await rateIsEdited(page);
  await page.locator('[data-step=ball]').click();
}

const rateIsEdited = (page: Page) =>
  expect.poll(() => figure(page, 'clock').textContent(), LONG).toMatch(/^11\s000 \/s$/);

/** Measures to the end; gives the numbers of the result as they are shown. */
async function measured(page: Page): Promise<string> {
  await page.locator('[data-step=ball]').click();
  await measureButton(page).click();
  await page.getByRole('button', { name: 'Abbrechen' }).waitFor({ state: 'attached' });
  await measureButton(page).waitFor(LONG);
  return numbersOf(page);
}

async function numbersOf(page: Page): Promise<string> {
  await page.locator('[data-step=result]').click();
  const text = await page.locator('[data-role=exit-velocity]').textContent(LONG);
  await page.locator('[data-step=ball]').click();
  return text ?? '';
}

/** Inputs and the result before are still there. */
async function keeps(page: Page, numbers: string): Promise<void> {
  await rateIsEdited(page);
  expect(await numbersOf(page)).toBe(numbers);
  expect(await page.getByRole('button', { name: 'Rückgängig', exact: true }).isEnabled()).toBe(
    true,
  );
}

async function tellsThreads(tool: OpenTool, kind: string, what: () => void): Promise<void> {
  const threads = tool.page.workers().filter((one) => one.url().includes(`${kind}.worker`));
  expect(threads.length).toBeGreaterThan(0);
  await threads[0]?.evaluate(what).catch(() => {}); // it ends before it answers
}

it.each(['film', 'measure', 'reduce'])(
  'the %s thread ends without a word, or fails',
  async (kind) => {
    await using tool = await german();
    const { page } = tool;
    await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
    const numbers = await measured(page);
    const faults = [
      [() => self.close(), 'ohne Angabe eines Grundes'],
      [
        () =>
          void setTimeout(() => {
            throw new Error('broken on purpose');
          }),
        'broken on purpose',
      ],
    ] as const;
    for (const [fault, why] of faults) {
      await measureButton(page).click();
      await page.locator('progress[value]').waitFor({ state: 'attached', ...LONG });
      await tellsThreads(tool, kind, fault);
      await told(page, 'threadDied').waitFor(LONG);
      expect(await told(page, 'threadDied').textContent()).toContain(
        'Ein Hintergrundprozess brach ab',
      );
      expect(await told(page, 'threadDied').textContent()).toContain(why);
      await keeps(page, numbers);
      expect(await measured(page)).toBe(numbers);
      expect(await told(page, 'threadDied').count()).toBe(0);
    }
  },
  900_000,
);

it('the thread that looks through the film ends: measuring goes on', async () => {
  await using tool = await german();
  const { page } = tool;
  await showsFilm(page);
  const looking = page.waitForEvent('worker', (one) => one.url().includes('scenery.worker'));
  await page
    .locator('input[data-role=files]')
    .setInputFiles([`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')]);
  await (await looking).evaluate(() => self.close()).catch(() => {});
  await showsFilm(page);
  await edited(page);
  const numbers = await measured(page);
  expect(numbers).toContain('m/s');
  await keeps(page, numbers);
}, 600_000);

it('a clip is damaged in its middle', async () => {
  const bytes = readFileSync(`${SAMPLE}/clip.mp4`);
  bytes.fill(0x55, bytes.length / 2, bytes.length / 2 + 6000);
  const damaged = join(folder, 'damaged.mp4');
  writeFileSync(damaged, bytes);
  await using tool = await german();
  const { page } = tool;
  await opened(page, [damaged, shotFor('damaged.mp4')], 'damaged.mp4');
  await measureButton(page).click();
  const problem = page.locator('.notice-problem[data-code]').first();
  await problem.waitFor(LONG);
  expect(await problem.getAttribute('data-code')).toMatch(/^(decoderFailed|truncated)$/);
  expect(await problem.textContent()).toMatch(/Kopieren Sie .*von der Kamera/);
  await rateIsEdited(page);
  // Its other frames can still be seen, and the copy that is whole is measured by the same button.
  await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  const numbers = await measured(page);
  expect(numbers).toContain('m/s');
  expect(await page.locator('.notice-problem').count()).toBe(0);
}, 600_000);

it('the page is reloaded in the middle of a run', async () => {
  await using tool = await german();
  const { page } = tool;
  await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  const numbers = await measured(page);
  const calibration = await figure(page, 'scale').textContent();
  await measureButton(page).click();
  await page.locator('progress[value]').waitFor({ state: 'attached', ...LONG });
  await page.reload();
  await showsFilm(page);
  await keeps(page, numbers);
  expect(await figure(page, 'scale').textContent()).toBe(calibration);
  expect(await measured(page)).toBe(numbers);
  expect(tool.errors).toEqual([]);
}, 600_000);

it('the disk is full', async () => {
  await using tool = await german();
  const { page } = tool;
  const cdp = await page.context().newCDPSession(page);
  const { origin } = new URL(tool.address);
  await showsFilm(page);
  await cdp.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1000 });
  await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  await page.locator('[data-step=footage]').click();
  await told(page, 'workNotKept').waitFor(LONG);
  expect(await told(page, 'workNotKept').textContent()).toContain('Sein Speicher ist voll');
  const numbers = await measured(page);
  await keeps(page, numbers);

  await cdp.send('Storage.overrideQuotaForOrigin', { origin });
  await page.locator('[data-step=footage]').click();
  await told(page, 'workNotKept').waitFor({ state: 'detached', ...LONG });
  await page.reload();
  // The footage was too large to be copied while the disk was full: it is asked for.
  await page.locator('input[data-role=files]').waitFor({ state: 'attached', ...LONG });
  await page.locator('input[data-role=files]').setInputFiles(`${SAMPLE}/clip.mp4`);
  await showsFilm(page);
  await page.locator('[data-step=ball]').click();
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

/** The sample as headerless grey, which is read from disk frame by frame and not kept in memory. */
async function greySample(name: string): Promise<{ film: string; shot: string }> {
  const source = await openFootage([await footageFile(`${SAMPLE}/clip.mp4`)], nodePlatform);
  const { width, height, frameCount } = source.info;
  const planes: Uint8Array[] = [];
  for await (const { data } of source.frames({ start: 0, end: frameCount })) {
    planes.push(data as Uint8Array);
  }
  await source.close();
  const film = join(folder, name);
  writeFileSync(film, Buffer.concat(planes));
  const raw = { width, height, bits: 8, byteOrder: 'little', skip: 0, gap: 0 };
  return { film, shot: shotFor(name, { raw, fields: 'auto' }) };
}

it('the file is moved away, comes back, and is written over while it is open', async () => {
  const { film, shot } = await greySample('film.gray');
  await using tool = await german();
  const { page } = tool;
  await opened(page, [film, shot], 'film.gray');
  const numbers = await measured(page);
  const fails = async () => {
    await measureButton(page).click();
    await told(page, 'unreadable').waitFor(LONG);
    expect(await told(page, 'unreadable').textContent()).toContain(
      '„film.gray“ lässt sich nicht mehr lesen',
    );
    await keeps(page, numbers);
  };
  renameSync(film, `${film}.away`);
  await fails();
  renameSync(`${film}.away`, film);
  expect(await measured(page)).toBe(numbers);

  const whole = readFileSync(film);
  writeFileSync(film, Buffer.from(whole).reverse());
  await fails();
  writeFileSync(film, whole);
  await page.locator('input[data-role=files]').setInputFiles([film, shot]);
  await expect.poll(() => figure(page, 'clock').textContent(), LONG).toMatch(/^12\s000 \/s$/);
  await edited(page);
  expect(await measured(page)).toBe(numbers);
}, 900_000);

it('the server forbids WebAssembly', async () => {
  await using tool = await german();
  const { page } = tool;
  await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  const numbers = await measured(page);
  const forbid = async (route: Route) => {
    const response = await route.fetch();
    const headers = response.headers();
    const policy = headers['content-security-policy'] ?? '';
    await route.fulfill({
      response,
      headers: { ...headers, 'content-security-policy': policy.replace(" 'wasm-unsafe-eval'", '') },
    });
  };
  await page.context().route(/\/$|\.js$/, forbid);
  await page.reload();
  await page.locator('[data-step=footage]').click();
  await told(page, 'webAssemblyRefused').waitFor(LONG);
  const words = await told(page, 'webAssemblyRefused').textContent();
  expect(words).toContain('darf kein WebAssembly ausführen');
  expect(words).toContain("script-src 'self' 'wasm-unsafe-eval'");

  await page.context().unroute(/\/$|\.js$/, forbid);
  await page.reload();
  await showsFilm(page);
  await page.locator('[data-step=ball]').click();
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

/** Put before a thread's own script: the thread is refused memory. */
const noRoomForOpenCv = `WebAssembly.Memory = class { constructor() { throw new RangeError('no room'); } };\n`;
const noRoomForFfmpeg = `{
  const instantiate = WebAssembly.instantiate;
  let refuses = false;
  new BroadcastChannel('memory').onmessage = ({ data }) => { refuses = data === 'gone'; };
  WebAssembly.instantiate = (...given) =>
    refuses && given[0] instanceof WebAssembly.Module
      ? Promise.reject(new RangeError('no room'))
      : instantiate.apply(WebAssembly, given);
}\n`;
const withPrelude = (prelude: string) => async (route: Route) => {
  const response = await route.fetch();
  await route.fulfill({ response, body: prelude + (await response.text()) });
};

it('memory runs out where OpenCV is started', async () => {
  await using tool = await german();
  const { page } = tool;
  await showsFilm(page);
  const starve = withPrelude(noRoomForOpenCv);
  await page.context().route(/measure\.worker/, starve);
  await page.reload();
  await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  await page.context().unroute(/measure\.worker/, starve);
  await measureButton(page).click();
  await told(page, 'visionFailed').waitFor(LONG);
  expect(await told(page, 'visionFailed').textContent()).toContain(
    'Vielleicht reichte der Speicher nicht',
  );
  await rateIsEdited(page);
  // Its threads were replaced by ones that have room.
  const numbers = await measured(page);
  expect(numbers).toContain('m/s');
  await keeps(page, numbers);
}, 600_000);

it('memory runs out where ffmpeg decodes', async () => {
  await using tool = await german();
  const { page } = tool;
  await showsFilm(page);
  await page.context().route(/film\.worker/, withPrelude(noRoomForFfmpeg));
  await page.reload();
  const shot = 'sample-clips/d-mjpeg/d-mjpeg.shot.json';
  await opened(page, ['sample-clips/d-mjpeg/clip.avi', shot], 'clip.avi');
  const numbers = await measured(page);
  const memory = (is: string) =>
    page.evaluate((said) => new BroadcastChannel('memory').postMessage(said), is);
  await memory('gone');
  await measureButton(page).click();
  await told(page, 'outOfMemory').waitFor(LONG);
  expect(await told(page, 'outOfMemory').textContent()).toContain('ging der Speicher aus');
  await memory('back');
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

it('the browser keeps nothing, or what it kept is deleted under the page', async () => {
  await using without = await german();
  await without.page.addInitScript(() =>
    Object.defineProperty(window, 'indexedDB', { value: undefined }),
  );
  await without.page.reload();
  await opened(without.page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  await without.page.locator('[data-step=footage]').click();
  await told(without.page, 'workNotKept').waitFor(LONG);
  expect(await told(without.page, 'workNotKept').textContent()).toContain(
    'Der Browser behält diese Arbeit nicht',
  );
  const numbers = await measured(without.page);
  await keeps(without.page, numbers);

  await using tool = await german();
  const { page } = tool;
  await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  expect(await measured(page)).toBe(numbers);
  await page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const deleting = indexedDB.deleteDatabase('exitframe');
        deleting.onsuccess = resolve;
        deleting.onblocked = reject;
      }),
  );
  await page.reload();
  await showsFilm(page);
  await page.locator('[data-step=ball]').click();
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

it('the network goes while scripts of threads are still to be fetched', async () => {
  await using tool = await german();
  const { page } = tool;
  await opened(page, [`${SAMPLE}/clip.mp4`, shotFor('clip.mp4')], 'clip.mp4');
  const cut = (route: Route) => route.abort('internetdisconnected');

  // The library that measuring fetches when it is first asked for.
  await page.context().route(/assets\/library/, cut);
  await measureButton(page).click();
  await told(page, 'visionMissing').waitFor(LONG);
  expect(await told(page, 'visionMissing').textContent()).toContain('konnte nicht geholt werden');
  await rateIsEdited(page);
  await page.context().unroute(/assets\/library/, cut);
  const numbers = await measured(page);
  expect(numbers).toContain('m/s');

  // Threads that have to be started anew.
  await page.context().route(/\.worker/, cut);
  await tellsThreads(tool, 'reduce', () => self.close());
  await told(page, 'threadsNotStarted').waitFor({ state: 'attached', ...LONG });
  await page.locator('[data-step=ball]').click();
  await measureButton(page).click();
  await told(page, 'threadsNotStarted').waitFor(LONG);
  expect(await told(page, 'threadsNotStarted').textContent()).toContain(
    'Seine Datei konnte nicht geholt werden',
  );
  await keeps(page, numbers);
  await page.context().unroute(/\.worker/, cut);
  expect(await measured(page)).toBe(numbers);

  // The page itself, before its threads are up.
  await page.context().route(/\.worker/, cut);
  await page.reload();
  await page.getByText('Seine Datei konnte nicht geholt werden').waitFor(LONG);
  await page.context().unroute(/\.worker/, cut);
  await page.reload();
  await showsFilm(page);
  await page.locator('[data-step=ball]').click();
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 900_000);
