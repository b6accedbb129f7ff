import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawPlot } from './plot';
import { CELLS, cellsOf, type NamedReport } from './table';

const PLACE = /(<!-- validation:begin -->\n).*(<!-- validation:end -->)/s;

/** Writes docs/validation.md, its plots, and the figures of all frames of each class into README.md. */
export function writePage(
  root: string,
  subject: string,
  seed: number,
  reports: readonly NamedReport[],
): void {
  const folder = join(root, 'docs/validation');
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const plot of reports.flatMap(({ report }) => report.plots)) {
    writeFileSync(join(folder, `${plot.file}.svg`), drawPlot(plot));
  }
  writeFileSync(join(root, 'docs/validation.md'), page(subject, seed, reports));
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

Written by \`npm run validate -- ${subject}\` (seed ${seed}). Scenes are rendered, by a renderer that shares no code with the program: edges by their exact area on cells of an eighth of a pixel, blurred by the optics and gathered by the pixels, with shot and read noise, rounded to 8 bit. What is drawn for each shot: place, direction, light, focus, background (even, sloped or textured), grey levels and noise. A shot is a film of 48 frames, measured as the program measures a film: the background from all frames, a first pass, the ball learnt from it, a second pass. The first guess of a place is up to a quarter of the radius off the truth, the radius told 1 % off (standard deviation).

The bound is that of Cramér and Rao: no unbiased estimator has a smaller covariance. It is computed for each shot from the noise-free picture's derivatives, the variance that of shot noise, read noise and rounding (1/12). Its unknowns are stated with each class. *u* is the standard uncertainty that the program states; shares within *k u* count the errors along and across the flight. Limits beside a share are exact 95 % binomial limits (Clopper and Pearson); rows without a limit are for information. The frames of a shot err together, so a part of a class, with few shots, fails only where it exceeds the limit by more than twice the ± beside it (a jackknife over its shots), or by more than 15 % (RMS) or 100 % (bias) of the limit. Frames that the program refuses are counted in a row of their own.

\`--seed N\` draws other shots, \`--seed clock\` takes and prints a seed from the clock; \`--class NAME\` runs one class. Only a full run with seed 1 writes this page.

${reports.map(section).join('\n')}`;
}

const section = ({ name, report }: NamedReport): string => `## Class \`${name}\`

${report.text}

${markdownTable(report.rows.map(cellsOf))}
${report.plots.map(({ file, title }) => `![${title}](validation/${file}.svg)\n`).join('\n')}`;

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
