import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isAvailable } from '../core/estimate';
import { type Reason, reasonOf } from '../core/reason';
import { type Order, readArguments, resultName, USAGE } from './arguments';
import { reduceFile } from './reduceFile';

/** Larger outranks smaller. */
const EXIT = { reduced: 0, noExitVelocity: 1, badInput: 2 } as const;

/** One line on standard error. */
function report(where: string, { message, remedy }: Reason): void {
  const line = [`${where}:`, message, ...(remedy === undefined ? [] : [remedy])].join(' ');
  console.error(line.replace(/\s*\n\s*/g, ' '));
}

async function reduceAll({ shots, out }: Extract<Order, { kind: 'reduce' }>): Promise<number> {
  if (out !== null) await mkdir(out, { recursive: true });
  const setups: Parameters<typeof reduceFile>[1] = new Map();
  let exit: number = EXIT.reduced;
  for (const shot of shots) {
    try {
      const result = await reduceFile(shot, setups);
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
  return exit;
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
