import { mkdirSync, writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { drawPlot } from '../../validate/report/plot';
import { peakDuring, residentOfFamily } from '../resident';
import { openBenchPage, openClip } from './chromium';
import { type BenchClip, clipOf, longClip, wideClips } from './clips';
import { decodeNatively, reduceNatively, requireNative } from './native';
import { benchPage, benchPlots, type ClipRuns } from './page';

const RUNS = 5;
/** Beside those: 512 x 128 films of the same shot by frames, and 2000-frame films of it by width: what cost grows with. */
const LENGTHS = [1250, 2500, 5000] as const;
const WIDTHS = [640, 960] as const;
const COST_RUNS = 1;
const DOCS = 'docs';

/**
 * `npm run bench -- pipeline`: what films cost the tool's threads in Chromium, beside a native decoder with a short
 * script, run by run in turn on this machine; writes docs/bench.md. Renders its films at first, which takes minutes.
 */
export async function pipeline(say: (line: string) => void): Promise<void> {
  requireNative();
  const wide = await wideClips();
  const long = await longClip();
  const bench = await openBenchPage();
  try {
    const runs: ClipRuns[] = [];
    for (const clip of [...wide, long]) runs.push(await runClip(bench, clip, RUNS, say));
    const byLength: ClipRuns[] = [];
    for (const frames of LENGTHS) {
      byLength.push(await runClip(bench, await clipOf(512, 128, frames), COST_RUNS, say));
    }
    byLength.push(...runs.filter(({ clip }) => clip === long));
    const bySize: ClipRuns[] = [];
    for (const width of WIDTHS) {
      bySize.push(await runClip(bench, await clipOf(width, width / 5, 2000), COST_RUNS, say));
    }
    bySize.push(...runs.filter(({ clip }) => clip === wide[0]));
    mkdirSync(`${DOCS}/bench`, { recursive: true });
    for (const plot of benchPlots(byLength, bySize)) {
      writeFileSync(`${DOCS}/bench/${plot.file}`, drawPlot(plot));
    }
    writeFileSync(`${DOCS}/bench.md`, benchPage(runs, byLength, bySize));
    say(`${DOCS}/bench.md is written.`);
  } finally {
    await bench.close();
  }
}

interface Bench {
  readonly page: Page;
  readonly pid: number;
}

async function runClip(
  { page, pid }: Bench,
  clip: BenchClip,
  times: number,
  say: (line: string) => void,
): Promise<ClipRuns> {
  const shot = JSON.stringify(clip.shot);
  const { decoder } = await openClip(page, clip.path);
  // Modules warm: the first reduction fetches OpenCV, and the engine compiles what runs often.
  await page.evaluate((text) => window.pipeline.reduce(text), shot);
  const idle = residentOfFamily(pid);
  const runs: ClipRuns['runs'][number][] = [];
  for (let run = 0; run < times; run++) {
    const nativeDecode = await decodeNatively(clip);
    const decode = await page.evaluate(() => window.pipeline.decode());
    const nativeReduce = await reduceNatively(clip);
    const { value: reduce, peak } = await peakDuring(
      pid,
      page.evaluate((text) => window.pipeline.reduce(text), shot),
    );
    runs.push({ nativeDecode, decode, nativeReduce, reduce, growth: peak - idle });
    say(
      `${clip.label}, ${clip.width} x ${clip.height} x ${clip.frames}, run ${run + 1}: decoding ${decode.seconds.toFixed(2)} s (native ${nativeDecode.seconds.toFixed(2)} s), reducing ${(reduce.seconds - reduce.trials).toFixed(2)} s and Monte Carlo ${reduce.trials.toFixed(2)} s (native ${nativeReduce.seconds.toFixed(2)} s)`,
    );
  }
  return { clip, decoder, runs };
}
