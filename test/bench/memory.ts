import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { max, scaleLinear } from 'd3';
import { type Browser, chromium } from 'playwright-core';
import { preview } from 'vite';
import { chromiumLaunch } from '../../scripts/chromium.mjs';
import { goToMeasure, measure, openFilm, showsFilm } from './measuring';
import { type BenchClip, heldFilm, largeFilm } from './memoryClips';
import { familyOf, residentOf } from './resident';
import { openUnwatched } from './unwatched';

/** Growth that a measurement may cost beyond the idle page, whatever the length of the film, MiB. */
const ALLOWED = 300;
const SAMPLE_EVERY_MS = 500;
const GIB = 2 ** 30;

interface Sample {
  /** s since the film was chosen. */
  readonly time: number;
  /** Memory resident in the page's process, pages that it shares with others counted in part, MiB. */
  readonly page: number;
  /** The same of all the browser's processes. */
  readonly browser: number;
  readonly phase: 'opening' | 'measuring' | 'after';
}

interface Trace {
  readonly name: string;
  readonly frames: string;
  readonly idle: Omit<Sample, 'time' | 'phase'>;
  readonly samples: readonly Sample[];
  readonly speed: string;
}

const CASES: readonly {
  readonly name: string;
  make(folder: string): Promise<BenchClip>;
}[] = [
  { name: '2 000 frames of 512 x 128, H.264', make: (folder) => heldFilm(folder, 2000) },
  { name: '20 000 frames of 512 x 128, H.264', make: (folder) => heldFilm(folder, 20_000) },
  { name: '2 GiB of headerless grey, 1024 x 256', make: (to) => largeFilm(to, 2 * GIB, 'grey') },
  { name: '2 GiB of Y4M (ffmpeg), 1024 x 256', make: (to) => largeFilm(to, 2 * GIB, 'y4m') },
];

const isPage = (pid: number): boolean => {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('--type=renderer');
  } catch {
    return false;
  }
};

function look(browser: number): { page: number; browser: number } {
  const family = familyOf(browser).map((pid) => ({ pid, resident: residentOf(pid) }));
  return {
    page: Math.max(0, ...family.filter(({ pid }) => isPage(pid)).map(({ resident }) => resident)),
    browser: family.reduce((sum, { resident }) => sum + resident, 0),
  };
}

async function traceOf(name: string, clip: BenchClip, address: string): Promise<Trace> {
  // Not by way of a server, to which a film of 2 GiB would be sent in pieces.
  const browser = await chromium.launch(chromiumLaunch());
  const pid = await processOf(browser);
  let timer: ReturnType<typeof setInterval> | undefined;
  try {
    // Keeping the program's files is no part of measuring.
    const page = await openUnwatched(
      browser,
      address,
      "Reflect.deleteProperty(Navigator.prototype, 'serviceWorker')",
    );
    await showsFilm(page, 'clip.mp4', 120_000);
    await pause(5000);
    const idle = look(pid);
    const samples: Sample[] = [];
    let phase: Sample['phase'] = 'opening';
    const begun = performance.now();
    timer = setInterval(() => {
      samples.push({ time: (performance.now() - begun) / 1000, ...look(pid), phase });
    }, SAMPLE_EVERY_MS);
    await openFilm(page, clip.film, clip.shot);
    const last = await page.evaluate(`document.querySelector('.frame-slider').max`);
    phase = 'measuring';
    await goToMeasure(page);
    await measure(page);
    phase = 'after';
    await pause(5000);
    const speed = await page.evaluate(
      `document.querySelector('[data-step=result] .step-figure').textContent`,
    );
    return { name, frames: String(Number(last) + 1), idle, samples, speed: String(speed) };
  } finally {
    clearInterval(timer);
    await browser.close();
  }
}

async function processOf(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const main = processInfo.find(({ type }) => type === 'browser');
  if (main === undefined) throw new Error('The browser does not tell its process.');
  return main.id;
}

const growth = ({ idle, samples }: Trace, of: 'page' | 'browser') =>
  Math.max(...samples.map((one) => one[of] - idle[of]));

/** `npm run bench -- memory`: memory resident while long and large films are opened and measured in the built tool. */
export async function memory(say: (line: string) => void): Promise<void> {
  const only = process.argv[3];
  const folder = mkdtempSync(join(tmpdir(), 'memory-'));
  const address = process.env.TOOL_ADDRESS;
  const server =
    address === undefined ? await preview({ preview: { port: 0 }, logLevel: 'warn' }) : null;
  const traces: Trace[] = [];
  try {
    for (const { name, make } of CASES) {
      if (only !== undefined && !name.startsWith(only)) continue;
      const clip = await make(folder);
      const trace = await traceOf(name, clip, address ?? server?.resolvedUrls?.local[0] ?? '');
      rmSync(clip.film);
      traces.push(trace);
      say(
        `${name} (${trace.frames} frames, ${trace.speed}): idle ${trace.idle.page.toFixed(0)} MiB, largest growth ${growth(trace, 'page').toFixed(0)} MiB of the page, ${growth(trace, 'browser').toFixed(0)} MiB of the whole browser; ${ALLOWED} MiB are allowed`,
      );
      for (const { time, page, browser, phase } of thinned(trace.samples, 40)) {
        say(
          `  ${time.toFixed(1).padStart(7)} s  ${page.toFixed(0).padStart(5)} MiB  ${browser.toFixed(0).padStart(5)} MiB  ${phase}`,
        );
      }
      if (only !== undefined) continue;
      // After each: a later one may take long, or fail.
      writeFileSync('docs/memory.svg', plotOf(traces));
      writeFileSync('docs/memory.md', documentOf(traces));
    }
  } finally {
    rmSync(folder, { recursive: true });
    await server?.close();
  }
}

/** At most so many, spread evenly, the last among them. */
const thinned = <T>(all: readonly T[], count: number): T[] => {
  const step = Math.max(1, Math.ceil(all.length / count));
  return all.filter((_, i) => (all.length - 1 - i) % step === 0);
};

const SIZE = { width: 800, height: 320, left: 56, right: 16, top: 16, bottom: 40 } as const;
/** Okabe and Ito's colours, and dashes that tell the lines apart without them. */
const LOOKS = [
  ['#0072b2', ''],
  ['#d55e00', '6 3'],
  ['#009e73', '2 3'],
  ['#cc79a7', '8 3 2 3'],
] as const;

/** Growth of the page's process over the share of the time that each took. */
function plotOf(traces: readonly Trace[]): string {
  const { width, height, left, right, top, bottom } = SIZE;
  const most = max(traces, (trace) => growth(trace, 'page')) ?? ALLOWED;
  const x = scaleLinear([0, 1], [left, width - right]);
  const y = scaleLinear([0, Math.max(ALLOWED, most) * 1.1], [height - bottom, top]);
  const text = (at: readonly [number, number], words: string, more = '') =>
    `<text x="${at[0].toFixed(1)}" y="${at[1].toFixed(1)}" ${more}>${words}</text>`;
  const lines = traces.map(({ name, idle, samples }, i) => {
    const end = samples.at(-1)?.time ?? 1;
    const [colour, dashes] = LOOKS[i] ?? LOOKS[0];
    const points = samples
      .map(
        ({ time, page }) =>
          `${x(time / end).toFixed(1)},${y(Math.max(0, page - idle.page)).toFixed(1)}`,
      )
      .join(' ');
    return [
      `<polyline points="${points}" fill="none" stroke="${colour}" stroke-width="1.5" stroke-dasharray="${dashes}"/>`,
      text([left + 8, top + 12 + 14 * i], `${name}: ${end.toFixed(0)} s`, `fill="${colour}"`),
    ].join('\n');
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-label="Growth of the page's memory while each film is measured" font-family="sans-serif" font-size="11">
<rect width="${width}" height="${height}" fill="#fff"/>
${y
  .ticks(6)
  .map(
    (tick) =>
      `<line x1="${left}" x2="${width - right}" y1="${y(tick).toFixed(1)}" y2="${y(tick).toFixed(1)}" stroke="#ddd"/>${text([left - 6, y(tick) + 4], String(tick), 'text-anchor="end" fill="#333"')}`,
  )
  .join('\n')}
<line x1="${left}" x2="${width - right}" y1="${y(ALLOWED).toFixed(1)}" y2="${y(ALLOWED).toFixed(1)}" stroke="#000" stroke-dasharray="1 2"/>
${text([width - right, y(ALLOWED) - 4], `${ALLOWED} MiB allowed`, 'text-anchor="end" fill="#000"')}
${text([left, height - 12], 'Share of the time from choosing the film to its result; growth beyond the idle page, MiB', 'fill="#333"')}
${lines.join('\n')}
</svg>
`;
}

const documentOf = (traces: readonly Trace[]): string => `# Memory while measuring

Written by \`npm run bench -- memory\`: the built tool in Chromium opens a film and measures it, in a page whose traffic nobody records (a driver's record of it lies in the page's own process); every ${SAMPLE_EVERY_MS / 1000} s the memory resident in the page's process and in all of the browser's is read (proportional set size). Growth is counted from the page standing idle with its first sample open. A measurement may take ${ALLOWED} MiB beyond that, whatever the length of the film.

| film | frames | exit speed | idle page, MiB | largest growth of the page, MiB | of the whole browser, MiB |
|---|---|---|---|---|---|
${traces
  .map(
    (trace) =>
      `| ${trace.name} | ${trace.frames} | ${trace.speed} | ${trace.idle.page.toFixed(0)} | ${growth(trace, 'page').toFixed(0)} | ${growth(trace, 'browser').toFixed(0)} |`,
  )
  .join('\n')}

![Growth of the page's memory while each film is measured](memory.svg)

What it consists of, as Chromium's own dumps of memory showed it on two cores, MiB:

| part | about |
|---|---|
| frames of the flight, held while they are measured | at most 40 |
| frames around the one on screen | at most 32 |
| ffmpeg, which decodes Y4M and checks H.264: its code as delivered 32, an instance in each thread that decodes | 50 to 100 |
| spans decoded side by side (Motion-JPEG, FFV1, ProRes), each of 8, on their way | 24 to 40 |
| pictures of the seal, 20 KiB a frame for at most 4096 frames | 39 at 2 000 frames |
| rows of the streak image, that before measuring and the new one | at most 16 each |
| 48 frames the still scene is learnt from | 12 at 1024 x 256 |
| each measuring thread: OpenCV's memory, scripts, what it leaves to the collector | 10 to 30 |
| messages under way (what passes from port to port is copied), compiled code | 30 |
`;
