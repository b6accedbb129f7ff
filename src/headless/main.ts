/** `npm run reduce`. */
import { mkdir } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { isAvailable } from '../core/estimate';
import { orThrow } from '../core/reason';
import type { Result } from '../shot/result';
import { REDUCE_USAGE, type ReduceOrder, readReduceArguments } from './arguments';
import { EXIT, report, runCommand } from './command';
import { reduceMany } from './reduceMany';
import { writeWhole } from './resultFiles';
import { type SeriesPart, seriesOf, seriesPart, seriesText } from './series';

/** What a process may take at its height; films of 1024 x 256 px were seen to take half of it. */
const BYTES_A_SHOT = 2 ** 30;

const asManyAsFit = (): number =>
  Math.max(
    1,
    Math.min(availableParallelism(), Math.floor(process.availableMemory() / BYTES_A_SHOT)),
  );

async function reduce(order: ReduceOrder): Promise<number> {
  const { shots, out, series } = order;
  if (out !== null) await mkdir(out, { recursive: true });
  let exit: number = EXIT.done;
  const parts: SeriesPart[] = [];
  const count = { reduced: 0, kept: 0, failed: 0 };
  await reduceMany({ ...order, jobs: order.jobs ?? asManyAsFit() }, (path, outcome) => {
    if (!outcome.ok) {
      report(path, outcome.reason);
      count.failed++;
      exit = EXIT.badInput;
      return;
    }
    const { text, kept } = outcome.value;
    count[kept ? 'kept' : 'reduced']++;
    const result = JSON.parse(text) as Result;
    if (out === null) {
      process.stdout.write(shots.length > 1 ? `${JSON.stringify(result)}\n` : text);
    }
    if (series !== null) parts.push(orThrow(seriesPart(result)));
    if (!isAvailable(result.exitVelocity)) {
      report(path, result.exitVelocity.unavailable);
      exit = Math.max(exit, EXIT.noAnswer);
    }
  });
  if (out !== null) {
    const { reduced, kept, failed } = count;
    console.error(`reduce: ${reduced} reduced, ${kept} kept, ${failed} failed.`);
  }
  return series === null ? exit : Math.max(exit, await writeSeries(parts, series));
}

async function writeSeries(parts: readonly SeriesPart[], file: string): Promise<number> {
  const series = seriesOf(parts);
  if (!series.ok) {
    report(file, series.reason);
    return EXIT.noAnswer;
  }
  await writeWhole(file, seriesText(series.value));
  return EXIT.done;
}

await runCommand('reduce', REDUCE_USAGE, readReduceArguments(process.argv.slice(2)), reduce);
