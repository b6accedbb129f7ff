import { join } from 'node:path';
import type { Route } from 'playwright-core';
import { expect, it } from 'vitest';
import { staticHost } from '../staticHost';
import {
  clipOf,
  keeps,
  measureButton,
  measured,
  opened,
  openedWithPrelude,
  openGerman,
  ownFilm,
  rateIsEdited,
  scratchFolder,
  showsFilm,
  told,
  writeFilm,
} from './steps';

const folder = scratchFolder();
const film = ownFilm(folder);
const other = writeFilm(join(folder, 'other.avi'), clipOf('motionJpeg'), 'motionJpeg');

it('the server forbids WebAssembly', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
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
  await told(page, 'webAssemblyRefused').waitFor();
  const words = await told(page, 'webAssemblyRefused').textContent();
  expect(words).toContain('darf kein WebAssembly ausführen');
  expect(words).toContain("script-src 'self' 'wasm-unsafe-eval'");

  await page.context().unroute(/\/$|\.js$/, forbid);
  await page.reload();
  await showsFilm(page, film.film);
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

it('memory runs out where OpenCV is started', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  const feed = await openedWithPrelude(page, film, /measure\.worker/, noRoomForOpenCv);
  await feed();
  await measureButton(page).click();
  await told(page, 'visionFailed').waitFor();
  expect(await told(page, 'visionFailed').textContent()).toContain(
    'Vielleicht reichte der Speicher nicht',
  );
  await rateIsEdited(page);
  // Its threads were replaced by ones that have room.
  const numbers = await measured(page);
  await keeps(page, numbers);
}, 600_000);

it('memory runs out where ffmpeg opens a film', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await openedWithPrelude(page, film, /film\.worker/, noRoomForFfmpeg);
  const numbers = await measured(page);
  const memory = (is: string) =>
    page.evaluate((said) => new BroadcastChannel('memory').postMessage(said), is);
  await memory('gone');
  await page.locator('[data-step=footage]').click();
  await page.locator('input[data-role=files]').setInputFiles(other.film);
  await told(page, 'outOfMemory').waitFor();
  expect(await told(page, 'outOfMemory').textContent()).toContain('ging der Speicher aus');
  await showsFilm(page, film.film);
  await memory('back');
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

it('memory runs out in threads that decode side by side', async () => {
  let isGone = false;
  const refuses = `WebAssembly.instantiate = () => Promise.reject(new RangeError('no room'));\n`;
  const host = await staticHost('dist', '/tool/', (name) =>
    isGone && name.includes('decode.worker') ? refuses : '',
  );
  try {
    await using tool = await openGerman(host.address);
    const { page } = tool;
    await opened(page, film);
    const numbers = await measured(page);
    isGone = true;
    await measureButton(page).click();
    await told(page, 'outOfMemory').waitFor();
    expect(await told(page, 'outOfMemory').textContent()).toContain('ging der Speicher aus');
    await keeps(page, numbers);
    isGone = false;
    expect(await measured(page)).toBe(numbers);
  } finally {
    await host.close();
  }
}, 600_000);
