import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { clips } from './clips';
import { encode } from './encode';
import { Film } from './exposure';
import { hashFrames } from './framehash';
import { randomStream } from './random';
import type { ClipSpec } from './scenario';
import { FULL, read, STUDIO, TWELVE_IN_SIXTEEN } from './sensor';
import { shotFile } from './shotfile';
import { arrivals, soundTrack } from './sound';
import { type Stage, setStage } from './stage';
import { timeAt, truthFile } from './truthfile';

/** `npm run clips [-- NAME ...]`: renders the sample clips (all, or those named) beside this folder. */
const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !clips.some((clip) => clip.folder === name));
if (unknown.length > 0) {
  console.error(
    `no clip ${unknown.join(', ')}; there are ${clips.map((c) => c.folder).join(', ')}`,
  );
  process.exit(2);
}
for (const spec of clips) {
  if (wanted.length === 0 || wanted.includes(spec.folder)) await render(spec);
}

async function render(spec: ClipSpec): Promise<void> {
  const started = Date.now();
  const folder = join(root, spec.folder);
  mkdirSync(folder, { recursive: true });
  const stage = setStage(spec);
  const turned = spec.image.rotation === 90;
  const width = turned ? spec.image.height : spec.image.width;
  const height = turned ? spec.image.width : spec.image.height;
  const files = await encode(
    spec,
    {
      width,
      height,
      frames: film(stage),
      rotation: spec.image.rotation,
      times: spec.unevenFrames > 0 ? stage.times : null,
      sound: sound(stage),
    },
    folder,
  );
  write(join(folder, `${spec.folder}.shot.json`), shotFile(stage, folder, files));
  write(join(folder, 'truth.json'), truthFile(stage));
  write(join(folder, 'frames.json'), await hashFrames(folder, files, { width, height }));
  console.log(
    `${spec.folder}: ${spec.frames} frames, ${((Date.now() - started) / 1000).toFixed(1)} s`,
  );
}

function film(stage: Stage): (Uint8Array | Uint16Array)[] {
  const { spec } = stage;
  const noise = randomStream(spec.seed, 'noise');
  const camera = new Film(stage);
  const { kind } = spec.coding;
  const codes = kind === 'png' ? TWELVE_IN_SIXTEEN : kind === 'avi' ? FULL : STUDIO;
  const sensor = { ...codes, fullWell: spec.camera.fullWell, readNoise: spec.camera.readNoise };
  return Array.from({ length: spec.frames }, (_, i) => {
    const radiance = camera.frame(i);
    if (kind === 'png') return read(sensor, radiance, noise, new Uint16Array(radiance.length));
    const upright = read(sensor, radiance, noise, new Uint8Array(radiance.length));
    return spec.image.rotation === 90 ? asCoded(upright, spec.image.width) : upright;
  });
}

/** The frame as a sideways-held sensor codes it: a quarter turn clockwise makes it upright again. */
function asCoded(upright: Uint8Array, width: number): Uint8Array {
  const height = upright.length / width;
  const coded = new Uint8Array(upright.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      coded[(width - 1 - x) * height + y] = upright[y * width + x] as number;
    }
  }
  return coded;
}

function sound(stage: Stage): Float32Array | null {
  const { spec, truth } = stage;
  if (!spec.sound) return null;
  const impact = timeAt(stage, truth.backstop - truth.ballRadius);
  const seconds = Math.max((stage.times[spec.frames - 1] as number) + 0.01, impact + 0.06);
  return soundTrack(arrivals(truth, impact), seconds, randomStream(spec.seed, 'sound'));
}

function write(file: string, content: object): void {
  writeFileSync(file, `${JSON.stringify(content, null, 1)}\n`);
}
