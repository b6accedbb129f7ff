import { readdirSync, readFileSync } from 'node:fs';

const MIB = 1024 * 1024;
const PAGE_BYTES = 4096;
const SAMPLE_EVERY_MS = 50;

/** Parent of each process that runs, by number (Linux). */
function parents(): Map<number, number> {
  const found = new Map<number, number>();
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    try {
      // The name in brackets may hold spaces; what follows it does not.
      const [, parent] =
        readFileSync(`/proc/${name}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
      found.set(Number(name), Number(parent));
    } catch {
      // It has ended meanwhile.
    }
  }
  return found;
}

/** Memory that a process and all that it started hold resident, MiB. */
export function residentMiB(root: number): number {
  const parentOf = parents();
  const belongs = (pid: number): boolean => {
    for (let at: number | undefined = pid; at !== undefined; at = parentOf.get(at)) {
      if (at === root) return true;
    }
    return false;
  };
  let pages = 0;
  for (const pid of parentOf.keys()) {
    if (!belongs(pid)) continue;
    try {
      pages += Number(readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ')[1]);
    } catch {
      // As above.
    }
  }
  return (pages * PAGE_BYTES) / MIB;
}

/** The most that a process and all that it started hold while something goes on, MiB. */
export async function peakDuring<T>(
  root: number,
  work: Promise<T>,
): Promise<{ readonly value: T; readonly peak: number }> {
  let peak = residentMiB(root);
  const timer = setInterval(() => {
    peak = Math.max(peak, residentMiB(root));
  }, SAMPLE_EVERY_MS);
  try {
    return { value: await work, peak: Math.max(peak, residentMiB(root)) };
  } finally {
    clearInterval(timer);
  }
}
