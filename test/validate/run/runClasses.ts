import type { Registered } from '../registry';
import type { NamedReport } from '../report/table';
import { hashOf, openCache } from './cache';
import { runTasks, type Task } from './pool';

export interface RunOptions {
  readonly subject: string;
  readonly classes: readonly Registered[];
  readonly seed: number;
  /** Where the sources are that records depend on. */
  readonly root: string;
  /** Where records are kept. */
  readonly folder: string;
  readonly processes: number;
  /** Progress. */
  readonly say: (text: string) => void;
  /** How tasks are run; left out: in processes of their own. */
  readonly runAll?: typeof runTasks;
}

/** Runs what the cache does not hold yet, and concludes. */
export async function runClasses(options: RunOptions): Promise<NamedReport[]> {
  const { subject, classes, seed, root, folder, processes, say, runAll = runTasks } = options;
  const hashes = Object.fromEntries(
    classes.map(({ validation, sources }) => [validation.name, hashOf(root, sources)]),
  );
  const cache = openCache(folder, seed, hashes);
  const records = new Map<string, unknown[]>();
  const missing: Task[] = [];
  let total = 0;
  for (const { validation } of classes) {
    const { name, chunks } = validation;
    const kept = Array.from({ length: chunks }, (_, chunk) => cache.read(name, chunk));
    records.set(name, kept);
    total += chunks;
    kept.forEach((record, chunk) => {
      if (record === undefined) missing.push({ subject, name, chunk, seed });
    });
  }
  let done = total - missing.length;
  const started = performance.now();
  const tell = (name: string) => {
    const seconds = (performance.now() - started) / 1000;
    say(`\r${done} of ${total} chunks, ${seconds.toFixed(0)} s  ${name.padEnd(12)}`);
  };
  tell('');
  await runAll(missing, processes, ({ name, chunk }, record) => {
    cache.write(name, chunk, record);
    const kept = records.get(name);
    if (kept) kept[chunk] = record;
    done++;
    tell(name);
  });
  say('\n');
  return classes.map(({ validation }) => ({
    name: validation.name,
    report: validation.conclude(records.get(validation.name) ?? []),
  }));
}
