import { closeSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { GreyFrame } from '../../src/core/frame';
import { runCore } from '../../src/footage/ffmpeg/core';
import { footageFile, nodePlatform } from '../../src/footage/node';
import { openFootage } from '../../src/footage/open';

const SAMPLE = 'sample-clips/a-clean';

/** A film with the shot file it is measured by. */
export interface BenchClip {
  readonly film: string;
  readonly shot: string;
}

/** The sample at half its size, its last frame held with fresh noise until there are so many frames; H.264. */
export async function heldFilm(folder: string, frames: number): Promise<BenchClip> {
  const module = await nodePlatform.loadCore();
  const reader = await nodePlatform.reader(await footageFile(`${SAMPLE}/clip.mp4`));
  const film = join(folder, `held-${frames}.mkv`);
  const out = openSync(film, 'w');
  try {
    const { exitCode, log } = await runCore(module, {
      program: 'ffmpeg',
      args: [
        ...['-i', '/in/clip.mp4', '-frames:v', String(frames), '-vf'],
        `tpad=stop_mode=clone:stop=${frames},scale=512:128,noise=alls=4:allf=t`,
        ...['-an', '-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '18', '-g', '250'],
        ...['-pix_fmt', 'yuv420p', '-f', 'matroska', '/out/clip.mkv'],
      ],
      inputs: { 'clip.mp4': reader },
      outputs: { 'clip.mkv': (bytes) => writeSync(out, bytes) },
    });
    if (exitCode !== 0) throw new Error(log.slice(-5).join('\n'));
  } finally {
    closeSync(out);
  }
  const half = (values: number[]) => values.map((value) => value / 2);
  const shot = shotOf(film, (draft) => {
    const [length] = draft.scale.lengths;
    length.from = half(length.from);
    length.to = half(length.to);
    draft.muzzle.point = half(draft.muzzle.point);
  });
  return { film, shot };
}

/** The sample's frames, then its last ones over and over: uncompressed, at least so many bytes. */
export async function largeFilm(
  folder: string,
  bytes: number,
  kind: 'grey' | 'y4m',
): Promise<BenchClip> {
  const source = await openFootage([await footageFile(`${SAMPLE}/clip.mp4`)], nodePlatform);
  const frames: GreyFrame[] = [];
  for await (const frame of source.frames({ start: 0, end: source.info.frameCount })) {
    frames.push(frame);
  }
  await source.close();
  const { width, height } = source.info;
  const film = join(folder, `large.${kind === 'grey' ? 'gray' : 'y4m'}`);
  const out = openSync(film, 'w');
  try {
    const header = kind === 'y4m' ? `YUV4MPEG2 W${width} H${height} F25:1 Ip A1:1 Cmono\n` : '';
    writeSync(out, header);
    for (let i = 0, written = 0; written < bytes || i < frames.length; i++) {
      const { data } = frames[i < frames.length ? i : frames.length - 1 - (i % 16)] as GreyFrame;
      if (kind === 'y4m') writeSync(out, 'FRAME\n');
      written += writeSync(out, data as Uint8Array);
    }
  } finally {
    closeSync(out);
  }
  const raw = { width, height, bits: 8, byteOrder: 'little', skip: 0, gap: 0 };
  const shot = shotOf(film, (draft) => {
    if (kind === 'grey') draft.footage.reading = { raw, fields: 'auto' };
  });
  return { film, shot };
}

// biome-ignore lint/suspicious/noExplicitAny: a file's JSON, edited in a few places
function shotOf(film: string, edit: (shot: any) => void): string {
  const shot = JSON.parse(readFileSync(`${SAMPLE}/a-clean.shot.json`, 'utf8'));
  shot.footage = { path: film.slice(film.lastIndexOf('/') + 1), sha256: null };
  edit(shot);
  const path = film.replace(/\.\w+$/, '.shot.json');
  writeFileSync(path, JSON.stringify(shot));
  return path;
}
