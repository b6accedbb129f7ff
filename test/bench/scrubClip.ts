import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCore } from '../../src/footage/ffmpeg/core';
import { footageFile, nodePlatform } from '../../src/footage/node';

/** A film of 1280 x 256 pixels with key frames 250 apart, as encoders set them unless told; gives its path. */
export async function makeScrubClip(frames: number): Promise<string> {
  const module = await nodePlatform.loadCore();
  const reader = await nodePlatform.reader(await footageFile('sample-clips/a-clean/clip.mp4'));
  const parts: Uint8Array[] = [];
  const { exitCode, log } = await runCore(module, {
    program: 'ffmpeg',
    args: [
      ...['-stream_loop', '-1', '-i', '/in/clip.mp4', '-frames:v', String(frames)],
      ...[
        '-vf',
        'scale=1280:256,noise=alls=4:allf=t',
        '-an',
        '-c:v',
        'libx264',
        '-preset',
        'veryfast',
      ],
      ...['-crf', '20', '-g', '250', '-pix_fmt', 'yuv420p', '-f', 'matroska', '/out/clip.mkv'],
    ],
    inputs: { 'clip.mp4': reader },
    outputs: { 'clip.mkv': (bytes) => parts.push(bytes.slice()) },
  });
  if (exitCode !== 0) throw new Error(log.slice(-5).join('\n'));
  const path = join(mkdtempSync(join(tmpdir(), 'scrub-')), 'clip.mkv');
  writeFileSync(path, Buffer.concat(parts));
  return path;
}
