import { type ChildProcess, spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';

export interface CommandOutput {
  readonly code: number | null;
  readonly stdout: string;
  /** Lines on standard error. */
  readonly problems: readonly string[];
}

/** Starts the real command, as `npm run --silent reduce --` does. */
export const start = (main: 'main' | 'seriesMain', ...args: string[]): ChildProcess =>
  spawn(process.execPath, ['--import', 'tsx', `src/headless/${main}.ts`, ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });

/** What it says until it ends. */
export async function outputOf(child: ChildProcess): Promise<CommandOutput> {
  const { stdout, stderr } = child;
  if (stdout === null || stderr === null) throw new Error('started without pipes');
  const exited = new Promise<number | null>((resolve) => child.on('close', resolve));
  const [said, complained, code] = await Promise.all([text(stdout), text(stderr), exited]);
  return { code, stdout: said, problems: complained.split('\n').filter((line) => line !== '') };
}

export const reduce = (...args: string[]): Promise<CommandOutput> =>
  outputOf(start('main', ...args));

/** As `npm run --silent series --` does. */
export const series = (...args: string[]): Promise<CommandOutput> =>
  outputOf(start('seriesMain', ...args));
