import { spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';

export interface CommandOutput {
  readonly code: number | null;
  readonly stdout: string;
  /** Lines on standard error. */
  readonly problems: readonly string[];
}

/** Runs the real command, as `npm run --silent reduce --` does. */
export async function reduce(...args: string[]): Promise<CommandOutput> {
  const child = spawn(
    process.execPath,
    ['node_modules/tsx/dist/cli.mjs', 'src/headless/main.ts', ...args],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  const exited = new Promise<number | null>((resolve) => child.on('close', resolve));
  const [stdout, stderr, code] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    exited,
  ]);
  return { code, stdout, problems: stderr.split('\n').filter((line) => line !== '') };
}
