import { type Outcome, type Reason, reasonOf } from '../core/reason';

/** Larger outranks smaller. */
export const EXIT = { done: 0, noAnswer: 1, badInput: 2 } as const;

/** One line on standard error. */
export function report(where: string, { message, remedy }: Pick<Reason, 'message' | 'remedy'>) {
  const line = [`${where}:`, message, ...(remedy === undefined ? [] : [remedy])].join(' ');
  console.error(line.replace(/\s*\n\s*/g, ' '));
}

/** Runs a command on the arguments of this process; `run` gives the exit code. */
export async function runCommand<Order extends object>(
  name: string,
  usage: string,
  order: Outcome<Order | 'help'>,
  run: (order: Order) => Promise<number>,
): Promise<void> {
  try {
    if (!order.ok) {
      report(name, order.reason);
      process.exitCode = EXIT.badInput;
    } else if (order.value === 'help') {
      console.log(usage);
    } else {
      process.exitCode = await run(order.value);
    }
  } catch (error) {
    report(name, reasonOf(error));
    process.exitCode = EXIT.badInput;
  }
}
