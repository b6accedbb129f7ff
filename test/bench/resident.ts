import { readdirSync, readFileSync } from 'node:fs';

const SAMPLE_EVERY_MS = 250;

/** Process numbers of a process and all it started (Linux). */
export function familyOf(pid: number): number[] {
  const parents = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((name) => {
      try {
        // The name in brackets may hold blanks; the parent is the second field behind it.
        const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
        return [
          [Number(name), Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1])] as const,
        ];
      } catch {
        return []; // gone meanwhile
      }
    });
  const family = [pid];
  for (const member of family) {
    family.push(...parents.filter(([, parent]) => parent === member).map(([child]) => child));
  }
  return family;
}

/** Proportional set size (Linux, proc(5), smaps_rollup), MiB. */
export function residentOf(pid: number): number {
  try {
    const rollup = readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8');
    return Number(/^Pss:\s+(\d+)/m.exec(rollup)?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}

/** Memory that a process and all it started hold, MiB. */
export const residentOfFamily = (pid: number): number =>
  familyOf(pid).reduce((sum, member) => sum + residentOf(member), 0);

/** The most that a process and all it started hold while something goes on, MiB. */
export async function peakDuring<T>(
  pid: number,
  work: Promise<T>,
): Promise<{ readonly value: T; readonly peak: number }> {
  let peak = residentOfFamily(pid);
  const look = () => {
    peak = Math.max(peak, residentOfFamily(pid));
  };
  const timer = setInterval(look, SAMPLE_EVERY_MS);
  try {
    const value = await work;
    look();
    return { value, peak };
  } finally {
    clearInterval(timer);
  }
}
