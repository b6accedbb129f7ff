/** `npm run validate -- SUBJECT`: many shots of known truth, their errors against what is stated; see docs/validation*.md. */
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SUBJECTS } from '../registry';
import { pagePath, writePage } from '../report/page';
import { printTable } from '../report/table';
import { DEFAULT_SEED, readArguments, USAGE } from './arguments';
import { runClasses } from './runClasses';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const wanted = readArguments(process.argv.slice(2), Date.now());
if (typeof wanted === 'string') {
  process.stderr.write(`${wanted}\n${USAGE}\n`);
  process.exitCode = 2;
} else {
  const { subject, seed, className } = wanted;
  const all = SUBJECTS[subject] ?? [];
  const classes = all.filter(
    ({ validation }) => className === null || validation.name === className,
  );
  const reports = await runClasses({
    subject,
    classes,
    seed,
    root,
    folder: join(root, 'node_modules/.cache/validate'),
    processes: availableParallelism(),
    say: (text) => process.stderr.write(text),
  });
  process.stdout.write(printTable(reports, subject, seed));
  const failed = reports.some(({ report }) => report.rows.some(({ passed }) => !passed));
  if (className === null && seed === DEFAULT_SEED) {
    writePage(root, subject, seed, reports);
    process.stderr.write(`Wrote ${pagePath(subject)}.\n`);
  }
  process.exitCode = failed ? 1 : 0;
}
