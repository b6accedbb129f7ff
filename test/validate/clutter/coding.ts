import { runCore } from '../../../src/footage/ffmpeg/core';
import { nodePlatform } from '../../../src/footage/node';
import type { SyncReader } from '../../../src/footage/platform';
import type { Coding } from './stage';

/** Frames as they are after coding and decoding; grey values are the codec's luma, not rescaled. */
export async function codeAndDecode(
  frames: readonly Uint8Array[],
  width: number,
  height: number,
  coding: Coding,
): Promise<Uint8Array[]> {
  const size = `${width}x${height}`;
  const encoder =
    coding.codec === 'h264'
      ? ['-c:v', 'libx264', '-preset', 'veryfast', '-crf', `${coding.crf}`, '-g', '30']
      : ['-c:v', 'mjpeg', '-q:v', `${coding.quality}`];
  const pixels = coding.codec === 'h264' ? 'yuv420p' : 'yuvj420p';
  const coded = await run(
    joined(frames.map((grey) => withoutColour(grey, width, height))),
    ['-f', 'rawvideo', '-pixel_format', pixels, '-video_size', size, '-framerate', '30'],
    ['-pix_fmt', pixels, '-threads', '1', ...encoder, '-f', 'nut'],
  );
  const luma = await run(coded, [], ['-vf', 'extractplanes=y', '-f', 'rawvideo']);
  const area = width * height;
  if (luma.length !== frames.length * area) {
    throw new Error(`The coder gave ${luma.length / area} frames of ${frames.length}.`);
  }
  return frames.map((_, i) => luma.slice(i * area, (i + 1) * area));
}

async function run(
  bytes: Uint8Array,
  before: readonly string[],
  after: readonly string[],
): Promise<Uint8Array> {
  const reader: SyncReader = {
    size: bytes.length,
    read: (start, end) => bytes.subarray(start, end),
  };
  const parts: Uint8Array[] = [];
  const { exitCode, log } = await runCore(await nodePlatform.loadCore(), {
    program: 'ffmpeg',
    args: ['-v', 'error', ...before, '-i', '/in/film', ...after, '/out/film'],
    inputs: { film: reader },
    outputs: { film: (piece) => parts.push(piece.slice()) },
  });
  if (exitCode !== 0) throw new Error(`The coder failed: ${log.join(' ')}`);
  return joined(parts);
}

/** Luma with flat colour planes behind it. */
function withoutColour(grey: Uint8Array, width: number, height: number): Uint8Array {
  const planes = new Uint8Array(grey.length + (width * height) / 2).fill(128);
  planes.set(grey);
  return planes;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
