/** `npm run fuzz`: damaged footage and shot files, read under Node and in Chromium. See docs/fuzz.md. */
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { inChromium } from './chromium';
import { page } from './page';
import { readAll } from './pool';
import { SAMPLES } from './samples';
import { crossChecked, failures, type Row, type Trial, table } from './tally';

const USAGE = 'Usage: npm run fuzz -- [--seed N] [--count N] [--only PART OF A NAME] [--node]';
/** Of the page that is kept. */
const KEPT = { seed: 1, count: 500 } as const;

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: `${KEPT.seed}` },
    count: { type: 'string', default: `${KEPT.count}` },
    only: { type: 'string', default: '' },
    node: { type: 'boolean', default: false },
  },
});
const [seed, count] = [Number(values.seed), Number(values.count)];
if (!Number.isInteger(seed) || seed < 0 || !Number.isInteger(count) || count < 1) {
  process.stderr.write(`${USAGE}\n`);
  process.exit(2);
}
process.chdir(fileURLToPath(new URL('../..', import.meta.url)));

const names = [...SAMPLES.map(({ name }) => name), 'shot file'];
const chosen = names.flatMap((name, i) =>
  name.includes(values.only) ? [{ name, sample: i < SAMPLES.length ? i : null }] : [],
);
const found = new Map<string, Trial[]>(chosen.map(({ name }) => [name, []]));
const tasks = chosen.flatMap(({ sample }) =>
  Array.from({ length: count }, (_, number) => ({ sample, seed, number })),
);
let memory = 0;
let done = 0;
const pageRows = values.node ? Promise.resolve([]) : inChromium(seed, count, values.only);
await readAll(tasks, availableParallelism(), ({ sample, number }, answer) => {
  const { outcome, why, how } = answer;
  const name = sample === null ? 'shot file' : (names[sample] as string);
  if (outcome === 'failed') process.stderr.write(`${name}, mutant ${number}: ${why} (${how})\n`);
  found.get(name)?.push({
    ...{ number, outcome, why, how },
  });
  memory = Math.max(memory, answer.memory);
  done++;
  if (done % 100 === 0) process.stderr.write(`Node: ${done} of ${tasks.length}\n`);
});
const inNode = chosen.map(
  ({ name }): Row => ({ sample: name, where: 'Node', trials: found.get(name) ?? [] }),
);
const inPage = await pageRows;
const rows = inNode.flatMap((row) => [
  row,
  ...inPage.filter(({ sample }) => sample === row.sample).map((other) => crossChecked(other, row)),
]);

process.stdout.write(
  `${table(rows)}\n\nMost memory of a process under Node: ${Math.round(memory / 1e6)} MB\n`,
);
const wrong = failures(rows);
for (const line of wrong) process.stdout.write(`FAILED ${line}\n`);
if (seed === KEPT.seed && count === KEPT.count && values.only === '' && !values.node) {
  writeFileSync('docs/fuzz.md', page(rows, seed, memory));
  process.stderr.write('Wrote docs/fuzz.md.\n');
}
process.exitCode = wrong.length > 0 ? 1 : 0;
