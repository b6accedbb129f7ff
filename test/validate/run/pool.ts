import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface Task {
  readonly subject: string;
  readonly name: string;
  readonly chunk: number;
  readonly seed: number;
}

export type Answer = { readonly record: unknown } | { readonly error: string };

/** Runs tasks in so many processes of their own; `onRecord` is told of each as it is done. Rejects at the first that fails. */
export async function runTasks(
  tasks: readonly Task[],
  processes: number,
  onRecord: (task: Task, record: unknown) => void,
): Promise<void> {
  const waiting = [...tasks];
  const children: ChildProcess[] = [];
  const work = async () => {
    // Processes inherit the loader that this one runs under.
    const child = fork(fileURLToPath(new URL('worker.ts', import.meta.url)));
    children.push(child);
    for (let task = waiting.shift(); task !== undefined; task = waiting.shift()) {
      onRecord(task, await ask(child, task));
    }
    child.disconnect();
  };
  try {
    await Promise.all(Array.from({ length: Math.min(processes, tasks.length) }, work));
  } finally {
    for (const child of children) if (child.connected) child.kill();
  }
}

function ask(child: ChildProcess, task: Task): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const what = `class ${task.name}, chunk ${task.chunk}, seed ${task.seed}`;
    const ended = (code: number | null) => {
      reject(new Error(`The process of ${what} ended with code ${code}.`));
    };
    child.once('exit', ended);
    child.once('message', (answer: Answer) => {
      child.off('exit', ended);
      if ('error' in answer) reject(new Error(`${what}: ${answer.error}`));
      else resolve(answer.record);
    });
    child.send(task);
  });
}
