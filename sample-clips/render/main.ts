import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { clips } from './clips';
import { renderFootage } from './footage';
import { hashFrames } from './framehash';
import type { ClipSpec } from './scenario';
import { SERIES_FOLDER } from './series';
import { renderSeries } from './seriesFiles';
import { footageSha256, shotFile } from './shotfile';
import { setStage } from './stage';
import { truthFile } from './truthfile';
import { writeJson } from './writeJson';

/** `npm run clips [-- NAME ...]`: renders the sample clips and the series (all, or those named) beside this folder. */
const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const wanted = process.argv.slice(2);
const known = [...clips.map(({ folder }) => folder), SERIES_FOLDER];
const unknown = wanted.filter((name) => !known.includes(name));
if (unknown.length > 0) {
  console.error(`no clip ${unknown.join(', ')}; there are ${known.join(', ')}`);
  process.exit(2);
}
const isWanted = (name: string) => wanted.length === 0 || wanted.includes(name);
for (const spec of clips) if (isWanted(spec.folder)) await render(spec);
if (isWanted(SERIES_FOLDER)) await renderSeries(join(root, SERIES_FOLDER));

async function render(spec: ClipSpec): Promise<void> {
  const started = Date.now();
  const folder = join(root, spec.folder);
  mkdirSync(folder, { recursive: true });
  const stage = setStage(spec);
  const { files, ...size } = await renderFootage(stage, folder);
  writeJson(
    join(folder, `${spec.folder}.shot.json`),
    shotFile(stage, files, footageSha256(folder, files)),
  );
  writeJson(join(folder, 'truth.json'), truthFile(stage));
  writeJson(join(folder, 'frames.json'), await hashFrames(folder, files, size));
  console.log(
    `${spec.folder}: ${spec.frames} frames, ${((Date.now() - started) / 1000).toFixed(1)} s`,
  );
}
