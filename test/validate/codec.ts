import { type CoreRun, runCore } from '../../src/footage/ffmpeg/core';
import { nodePlatform } from '../../src/footage/node/index';
import type { RenderedFrame } from './render/film';

/** Frames through H.264 and back: x264 as built into the ffmpeg core, at a constant rate factor. */
export async function throughH264(
  frames: readonly RenderedFrame[],
  crf: number,
): Promise<RenderedFrame[]> {
  const [first] = frames;
  if (first === undefined) return [];
  const { width, height } = first;
  const size = width * height;
  // Luma, and colour at half the width and height: grey.
  const raw = new Uint8Array(frames.length * 1.5 * size).fill(128);
  frames.forEach(({ data }, i) => {
    raw.set(data, i * 1.5 * size);
  });
  const input = ['-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-s', `${width}x${height}`];
  const film = await transcode(
    [
      ...[...input, '-framerate', '30', '-i', '/in/from', '-c:v', 'libx264', '-preset', 'medium'],
      ...['-crf', String(crf), '-threads', '1', '-f', 'h264', '/out/to'],
    ],
    raw,
  );
  const back = await transcode(
    [
      '-f',
      'h264',
      '-i',
      '/in/from',
      '-vf',
      'extractplanes=y',
      '-fps_mode',
      'passthrough',
      '-f',
      'rawvideo',
      '/out/to',
    ],
    film,
  );
  if (back.length !== frames.length * size) {
    throw new Error(`The codec gave ${back.length / size} frames for ${frames.length}.`);
  }
  return frames.map((frame, i) => ({ ...frame, data: back.slice(i * size, (i + 1) * size) }));
}

/** Runs ffmpeg once; `args` name its input `/in/from` and its output `/out/to`. */
export async function transcode(args: readonly string[], bytes: Uint8Array): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  const core: CoreRun = {
    program: 'ffmpeg',
    args: ['-nostdin', '-y', ...args],
    inputs: { from: { size: bytes.length, read: (start, end) => bytes.subarray(start, end) } },
    outputs: { to: (part) => parts.push(part.slice()) },
  };
  const { exitCode, log } = await runCore(await nodePlatform.loadCore(), core);
  if (exitCode !== 0) throw new Error(`ffmpeg failed: ${log.slice(-5).join(' / ')}`);
  const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  parts.reduce((at, part) => {
    out.set(part, at);
    return at + part.length;
  }, 0);
  return out;
}
