/** `npm run accuracy`: reduces the sample clips and writes what was found beside the truth into README.md. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Reported } from '../src/core/estimate';
import { formatQuantity } from '../src/core/format';
import type { UnitKind } from '../src/core/unitTable';
import { reduceFile } from '../src/headless/reduceFile';

const root = fileURLToPath(new URL('..', import.meta.url));
const readme = join(root, 'README.md');
const PLACE = /(<!-- accuracy:begin -->\n).*(<!-- accuracy:end -->)/s;

/** Truth, value with u, and the error as a share of u: the cells of one quantity. */
function cells(truth: number | null, reported: Reported, kind: UnitKind, unit: string): string[] {
  if ('unavailable' in reported) return ['none', `none (\`${reported.unavailable.code}\`)`, ''];
  if (truth === null) return ['none', formatQuantity(reported, kind, unit), ''];
  const stated = formatQuantity(reported, kind, unit);
  const error = (reported.value - truth) / reported.u;
  return [
    formatQuantity({ value: truth, u: reported.u }, kind, unit, false),
    stated,
    `${error < 0 ? '−' : '+'}${Math.abs(error).toFixed(1)} u`,
  ];
}

const clips = readdirSync(join(root, 'sample-clips'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && /^[a-z]-/.test(entry.name))
  .map(({ name }) => name)
  .sort();

const rows: string[] = [];
for (const clip of clips) {
  const folder = join(root, 'sample-clips', clip);
  const truth = JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8'));
  const { result } = await reduceFile(join(folder, `${clip}.shot.json`));
  const row = [
    `\`${clip}\``,
    ...cells(truth.exitVelocity, result.exitVelocity, 'speed', 'm/s'),
    ...cells(truth.lead, result.lead, 'time', 'µs'),
  ];
  rows.push(`| ${row.join(' | ')} |`);
}
const table = `| clip | true exit velocity | found | error | true lead | found | error |
|---|---|---|---|---|---|---|
${rows.join('\n')}
`;
writeFileSync(readme, readFileSync(readme, 'utf8').replace(PLACE, `$1${table}$2`));
