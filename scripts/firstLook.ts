/** `npm run first-look`: reduces the sample that the page opens with, and writes what it shows of it before anything is measured. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { reduceFile } from '../src/headless/reduceFile';

/** As `FIRST_SAMPLE` of src/app/firstLook.ts. */
const SAMPLE = 'a-clean';
/** Far below any uncertainty, and half the bytes. */
const FIGURES = 9;

const folder = fileURLToPath(new URL(`../sample-clips/${SAMPLE}`, import.meta.url));
const reduction = await reduceFile(join(folder, `${SAMPLE}.shot.json`));
const plain = JSON.stringify(reduction, (_key, value: unknown) => {
  if (value instanceof Float64Array) return [...value];
  return typeof value === 'number' ? Number(value.toPrecision(FIGURES)) : value;
});
writeFileSync(join(folder, `${SAMPLE}.reduction.json`), `${plain}\n`);
