import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { INTRODUCTIONS } from './introductions';
import { drawPlot } from './plot';
import { CELLS, cellsOf, type NamedReport } from './table';

const PLACE = /(<!-- validation:begin -->\n).*(<!-- validation:end -->)/s;

/** Where a subject's page stands under the root, and the folder of its plots beside it. */
export const pagePath = (subject: string): string =>
  `docs/${subject === 'ball' ? 'validation' : `validation-${subject}`}.md`;
const plotsOf = (subject: string): string => basename(pagePath(subject), '.md');

/** Writes a subject's page and its plots; of the ball also the figures of all frames of each class into README.md. */
export function writePage(
  root: string,
  subject: string,
  seed: number,
  reports: readonly NamedReport[],
): void {
  const folder = join(root, 'docs', plotsOf(subject));
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const plot of reports.flatMap(({ report }) => report.plots)) {
    writeFileSync(join(folder, `${plot.file}.svg`), drawPlot(plot));
  }
  writeFileSync(join(root, pagePath(subject)), page(subject, seed, reports));
  if (subject !== 'ball') return;
  const readme = join(root, 'README.md');
  const text = readFileSync(readme, 'utf8');
  // As a function: the table may hold what a replacement string would read as a reference.
  writeFileSync(
    readme,
    text.replace(PLACE, (_, begin, end) => begin + summary(reports) + end),
  );
}

function page(subject: string, seed: number, reports: readonly NamedReport[]): string {
  return `# Validation of the ${subject}

Written by \`npm run validate -- ${subject}\` (seed ${seed}). ${INTRODUCTIONS[subject] ?? ''}

\`--seed N\` draws other shots, \`--seed clock\` takes and prints a seed from the clock; \`--class NAME\` runs one class. Only a full run with seed 1 writes this page.

${reports.map((report) => section(subject, report)).join('\n')}`;
}

const section = (subject: string, { name, report }: NamedReport): string => `## Class \`${name}\`

${report.text}

${markdownTable(report.rows.map(cellsOf))}
${report.plots.map(({ file, title }) => `![${title}](${plotsOf(subject)}/${file}.svg)\n`).join('\n')}`;

function markdownTable(rows: readonly (readonly string[])[]): string {
  const lines = [CELLS, CELLS.map(() => '---'), ...rows];
  return `${lines.map((cells) => `| ${cells.join(' | ')} |`).join('\n')}\n`;
}

/** For the README: what holds of all frames of a class. */
function summary(reports: readonly NamedReport[]): string {
  const rows = reports.flatMap(({ name, report }) => {
    const [first] = report.rows;
    return report.rows
      .filter((row) => row.of === first?.of && row.figure !== 'within 3 u')
      .filter(({ figure }) => !figure.endsWith('ellipse'))
      .map((row) => {
        const cells = cellsOf({ ...row, of: '' });
        return [`\`${name}\``, ...cells.slice(1, 5), cells.at(-1) ?? ''];
      });
  });
  const head = ['class', 'figure', 'value', 'limit', 'n', ''];
  const lines = [head, head.map(() => '---'), ...rows];
  return `${lines.map((cells) => `| ${cells.join(' | ')} |`).join('\n')}\n`;
}
