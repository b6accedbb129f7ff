import { startVitest } from 'vitest/node';
import type { Row } from './tally';

/** What came of the mutants in Chromium: the browser test of the same name, with more of them. */
export async function inChromium(seed: number, count: number, only: string): Promise<Row[]> {
  const vitest = await startVitest('test', ['test/browser/fuzz'], {
    ...{ project: 'browser', watch: false, testTimeout: 0 },
    provide: { fuzz: { seed, count, only } },
  });
  const rows = vitest.state
    .getTestModules()
    .flatMap((module) => [...module.children.allTests()])
    .flatMap((test) => test.meta().row ?? []);
  await vitest.close();
  process.exitCode = 0; // of the tests; the rows say what failed
  return rows;
}
