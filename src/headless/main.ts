import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isAvailable } from '../core/estimate';
import { type Reason, reasonOf } from '../core/reason';
import { type Order, readArguments, resultName, USAGE } from './arguments';
import { type Reduced, reduceFile } from './reduceFile';
import { seriesOf } from './series';

/** Larger outranks smaller. */
const EXIT = { reduced: 0, noExitVelocity: 1, badInput: 2 } as const;

/** One line on standard error. */
function report(where: string, { message, remedy }: Reason): void {
  const line = [`${where}:`, message, ...(remedy === undefined ? [] : [remedy])].join(' ');
  console.error(line.replace(/\s*\n\s*/g, ' '));
}

async function reduceAll({
  shots,
  out,
  series,
}: Extract<Order, { kind: 'reduce' }>): Promise<number> {
  if (out !== null) await mkdir(out, { recursive: true });
  const setups: Parameters<typeof reduceFile>[1] = new Map();
  let exit: number = EXIT.reduced;
  const reduced: Reduced[] = [];
  for (const shot of shots) {
    try {
      const one = await reduceFile(shot, setups);
      reduced.push(one);
      const { result } = one;
      const text = JSON.stringify(result, null, out === null && shots.length > 1 ? undefined : 2);
      if (out === null) process.stdout.write(`${text}\n`);
      else await writeFile(join(out, resultName(shot)), `${text}\n`);
      if (!isAvailable(result.exitVelocity)) {
        report(shot, result.exitVelocity.unavailable);
        exit = Math.max(exit, EXIT.noExitVelocity);
      }
    } catch (error) {
      report(shot, reasonOf(error));
      exit = EXIT.badInput;
    }
  }
  return series === null ? exit : Math.max(exit, await writeSeries(reduced, series));
}

async function writeSeries(reduced: readonly Reduced[], file: string): Promise<number> {
  const together = seriesOf(reduced);
  if (!together.ok) {
    report(file, together.reason);
    return EXIT.noExitVelocity;
  }
  await writeFile(file, `${JSON.stringify(together.value, null, 2)}\n`);
  return EXIT.reduced;
}

async function main(): Promise<number> {
  const order = readArguments(process.argv.slice(2));
  if (!order.ok) {
    report('reduce', order.reason);
    return EXIT.badInput;
  }
  if (order.value.kind === 'help') {
    console.log(USAGE);
    return EXIT.reduced;
  }
  try {
    return await reduceAll(order.value);
  } catch (error) {
    report('reduce', reasonOf(error));
    return EXIT.badInput;
  }
}

process.exitCode = await main();
