import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Answer, Task } from './child';
import { failed } from './judge';

/** A mutant not done with after so long hangs, ms: a thousand times what one takes on a slow machine. */
const LIMIT = 180_000;
/** No mutant is worth more memory, bytes; small films take about 0.3 GB, most of it the decoder. */
const MOST_MEMORY = 2 * 2 ** 30;

/** Reads mutants in so many processes of their own. One that hangs or dies takes nothing with it. */
export async function readAll(
  tasks: readonly Task[],
  processes: number,
  onAnswer: (task: Task, answer: Answer) => void,
): Promise<void> {
  const waiting = [...tasks];
  const work = async () => {
    let child: ChildProcess | null = null;
    for (let task = waiting.shift(); task !== undefined; task = waiting.shift()) {
      child ??= start();
      const answer = await ask(child, task);
      if (answer.how === GONE) child = null;
      onAnswer(task, answer.memory > MOST_MEMORY ? { ...answer, ...failed('memory') } : answer);
    }
    child?.disconnect();
  };
  await Promise.all(Array.from({ length: Math.min(processes, tasks.length) }, work));
}

const start = () =>
  fork(fileURLToPath(new URL('child.ts', import.meta.url)), {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });

const GONE = 'the process was ended or died';

function ask(child: ChildProcess, task: Task): Promise<Answer> {
  return new Promise((resolve) => {
    const gone = (why: string) => resolve({ ...failed(why), how: GONE, memory: 0 });
    const timer = setTimeout(() => {
      child.removeAllListeners();
      child.kill('SIGKILL');
      gone(`hangs: nothing for ${LIMIT / 1000} s`);
    }, LIMIT);
    const done = () => {
      clearTimeout(timer);
      child.removeAllListeners();
    };
    child.once('exit', (code, signal) => {
      done();
      gone(`the process died (${signal ?? code})`);
    });
    child.once('message', (answer: Answer) => {
      done();
      resolve(answer);
    });
    child.send(task);
  });
}
