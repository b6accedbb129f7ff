import type { CDPSession } from 'playwright-core';

/**
 * Longest task of the page's main thread while `work` goes on, ms, by the browser's own trace: by the clock, and of core
 * time, which other programs on the machine do not lengthen.
 */
export async function longestTask<T>(cdp: CDPSession, work: () => Promise<T>) {
  const tasks = new Map<string, { count: number; wall: number; core: number }>();
  const names = new Map<string, string>();
  const collect = ({ value }: { value: unknown[] }) => {
    for (const one of value as {
      name: string;
      pid: number;
      tid: number;
      dur?: number;
      tdur?: number;
      args: { name?: string };
    }[]) {
      const thread = `${one.pid}/${one.tid}`;
      if (one.name === 'thread_name') names.set(thread, one.args.name ?? '');
      if (one.name === 'RunTask') {
        const before = tasks.get(thread) ?? { count: 0, wall: 0, core: 0 };
        tasks.set(thread, {
          count: before.count + 1,
          wall: Math.max(before.wall, (one.dur ?? 0) / 1000),
          core: Math.max(before.core, (one.tdur ?? 0) / 1000),
        });
      }
    }
  };
  // The protocol's types know no unknown categories; these two are all that is read.
  cdp.on('Tracing.dataCollected', collect as never);
  await cdp.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: [
        'disabled-by-default-devtools.timeline',
        'devtools.timeline',
        '__metadata',
      ],
    },
  });
  const found = await work();
  const complete = new Promise((resolve) => cdp.once('Tracing.tracingComplete', resolve));
  await cdp.send('Tracing.end');
  await complete;
  cdp.off('Tracing.dataCollected', collect as never);
  // The browser keeps other renderers ready, which start up meanwhile: the page's has the most to do.
  const [page] = [...tasks]
    .filter(([thread]) => names.get(thread) === 'CrRendererMain')
    .map(([, of]) => of)
    .sort((a, b) => b.count - a.count);
  return { found, wall: page?.wall ?? 0, core: page?.core ?? 0 };
}
