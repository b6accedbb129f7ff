import { type ChildProcess, fork } from 'node:child_process';
import { failure, type Outcome, reasonOf } from '../core/reason';

/** Processes that each do one task at a time. A task that takes its process down with it fails alone. */
export interface Crew<Task, Done> {
  /** Waits for a free process. Failures: the task's own, and `processEnded`. */
  run(task: Task): Promise<Outcome<Done>>;
  /** Lets the processes go; no task may be under way. */
  end(): void;
}

/** What a process said last is kept for the reason why it ended, characters. */
const LAST_WORDS = 4000;

/** `module` is sent tasks as messages and answers each with an `Outcome`. At most `size` processes. */
export function createCrew<Task extends object, Done>(module: URL, size: number): Crew<Task, Done> {
  const idle: ChildProcess[] = [];
  const waiting: (() => void)[] = [];
  let busy = 0;

  const start = (): ChildProcess => {
    // What a library prints must not stand between the results.
    const child = fork(module, {
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    });
    child.once('exit', () => {
      if (idle.includes(child)) idle.splice(idle.indexOf(child), 1);
    });
    return child;
  };

  const work = (child: ChildProcess, task: Task) =>
    new Promise<Outcome<Done>>((resolve) => {
      let said = '';
      const listen = (text: Buffer) => {
        said = (said + text.toString()).slice(-LAST_WORDS);
      };
      const settle = (outcome: Outcome<Done>) => {
        child.stderr?.off('data', listen);
        child.removeAllListeners('message').removeAllListeners('error').off('close', onClose);
        if (child.connected) idle.push(child);
        resolve(outcome);
      };
      const onClose = (code: number | null, signal: string | null) =>
        settle(ended(code, signal, said));
      child.stderr?.on('data', listen);
      child.once('message', (outcome) => settle(outcome as Outcome<Done>));
      child.once('error', (error) => settle(ended(null, reasonOf(error).message, said)));
      child.once('close', onClose);
      child.send(task);
    });

  return {
    async run(task) {
      if (busy >= size) await new Promise<void>((resolve) => waiting.push(resolve));
      else busy++;
      try {
        return await work(idle.pop() ?? start(), task);
      } finally {
        const next = waiting.shift();
        if (next === undefined) busy--;
        else next();
      }
    },
    end() {
      for (const child of idle) child.disconnect();
    },
  };
}

function ended(code: number | null, signal: string | null, said: string): Outcome<never> {
  const fault = /^.*(?:FATAL ERROR|Error): .*$/m.exec(said)?.[0];
  const how = [signal ?? `exit code ${code}`, ...(fault === undefined ? [] : [fault.trim()])];
  return failure(
    'processEnded',
    `The process that reduced it ended before it was done (${how.join('; ')}).`,
    'If memory ran out, reduce fewer at a time with --jobs; then run the command again.',
  );
}
