import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { renderFootage } from './footage';
import { KEPT_CLIPS, series } from './series';
import { footageSha256, shotFile } from './shotfile';
import { type Stage, setStage } from './stage';
import { writeJson } from './writeJson';

/** Where all of the clips are rendered; only some of them are kept. */
const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const work = join(root, 'node_modules/.cache/series');

/** Renders every shot of the series, has the tool's own command reduce them, and keeps the files in `folder`. */
export async function renderSeries(folder: string): Promise<void> {
  mkdirSync(work, { recursive: true });
  mkdirSync(folder, { recursive: true });
  const stages: Stage[] = [];
  for (const spec of series) {
    const started = Date.now();
    const stage = setStage(spec);
    stages.push(stage);
    const clip = `${fileName(spec.name)}.mp4`;
    const { files } = await renderFootage(stage, work);
    renameSync(join(work, files[0] as string), join(work, clip));
    writeJson(
      join(work, `${fileName(spec.name)}.shot.json`),
      shotFile(stage, [clip], footageSha256(work, [clip])),
    );
    console.log(`${spec.name}: ${((Date.now() - started) / 1000).toFixed(1)} s`);
  }
  const names = series.map(({ name }) => fileName(name));
  const shots = names.map((name) => join(work, `${name}.shot.json`));
  execFileSync('npm', ['run', '--silent', 'reduce', '--', ...shots, '--out', work, '--again'], {
    ...{ cwd: root, stdio: 'inherit' },
  });
  for (const name of names) {
    for (const ending of ['shot.json', 'result.json']) copy(folder, `${name}.${ending}`);
  }
  for (const name of KEPT_CLIPS) copy(folder, `${fileName(name)}.mp4`);
  writeJson(join(folder, 'truth.json'), truthOf(stages));
}

const fileName = (name: string): string => name.replaceAll(' ', '-');

const copy = (folder: string, file: string) => copyFileSync(join(work, file), join(folder, file));

/** What all shots share, and each by itself. */
function truthOf(stages: readonly Stage[]): object {
  return {
    about:
      'Rendered, not filmed: the true values of an invented series of the (fictional) Brinewick Teaching Laboratory. SI units; burst and exit in s after the middle of frame 0; pressures of the residual air absolute, of the seal over that outside.',
    shots: stages.map(({ spec, truth }) => ({
      name: spec.name,
      exitVelocity: truth.velocity,
      exitTime: truth.exitTime,
      sealBurst: truth.burstTime,
      lead: truth.exitTime - truth.burstTime,
      launcher: truth.launch,
    })),
  };
}
