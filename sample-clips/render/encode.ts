import { spawn } from 'node:child_process';
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ClipSpec } from './scenario';
import { TICKS } from './shutter';
import { SAMPLE_RATE } from './sound';

/** The only place (with the frame hashes) that runs the native encoder. */
const FFMPEG = '/usr/bin/ffmpeg';
const LABEL = 'Rendered sample clip of an invented shot; no camera was there.';

/** Frames as coded (before rotation): 8-bit luma, or 16-bit grey for an image sequence. */
export interface Footage {
  readonly width: number;
  readonly height: number;
  readonly frames: readonly (Uint8Array | Uint16Array)[];
  /** Container times of uneven frames, s; null: played back at 30 frames a second. */
  readonly times: Float64Array | null;
  readonly sound: Float32Array | null;
}

/** Writes the clip's footage into `folder`; gives the file names in order. */
export async function encode(spec: ClipSpec, footage: Footage, folder: string): Promise<string[]> {
  const { width, height } = footage;
  const sixteen = spec.coding.kind === 'png';
  const input = [
    '-f',
    'rawvideo',
    '-pix_fmt',
    sixteen ? 'gray16le' : spec.coding.kind === 'avi' ? 'yuvj420p' : 'yuv420p',
    '-s',
    `${width}x${height}`,
    '-framerate',
    footage.times ? '240' : '30',
    '-i',
    'pipe:0',
  ];
  const plain = ['-threads', '1', '-fflags', '+bitexact', '-flags:v', '+bitexact'];
  const label = ['-map_metadata', '-1', '-metadata', `comment=${LABEL}`];
  const planes = footage.frames.map(sixteen ? bytesOf : withGreyChroma);
  switch (spec.coding.kind) {
    case 'png': {
      for (const name of readdirSync(folder).filter((n) => n.endsWith('.png'))) {
        rmSync(join(folder, name));
      }
      const pattern = join(folder, 'frame-%04d.png');
      await run([...input, ...plain, '-start_number', '0', '-pred', 'mixed', pattern], planes);
      return footage.frames.map((_, i) => `frame-${String(i).padStart(4, '0')}.png`);
    }
    case 'avi': {
      const coding = ['-c:v', 'mjpeg', '-q:v', String(spec.coding.quality)];
      await run([...input, ...plain, ...coding, ...label, '-y', join(folder, 'clip.avi')], planes);
      return ['clip.avi'];
    }
    case 'webm': {
      const coding = ['-c:v', 'libvpx-vp9', '-b:v', '0', '-crf', String(spec.coding.crf)];
      const pace = ['-deadline', 'good', '-cpu-used', '2', '-color_range', 'tv'];
      await run(
        [...input, ...plain, ...coding, ...pace, ...label, '-y', join(folder, 'clip.webm')],
        planes,
      );
      return ['clip.webm'];
    }
    case 'mp4': {
      await encodeMp4(spec, spec.coding.crf, footage, [input, plain, label], planes, folder);
      return ['clip.mp4'];
    }
  }
}

async function encodeMp4(
  spec: ClipSpec,
  crf: number,
  footage: Footage,
  [input, plain, label]: readonly [string[], string[], string[]],
  planes: readonly Uint8Array[],
  folder: string,
): Promise<void> {
  const coding = ['-c:v', 'libx264', '-preset', 'slow', '-crf', String(crf), '-color_range', 'tv'];
  const target = join(folder, 'clip.mp4');
  if (!footage.times) {
    await run(
      [...input, ...plain, ...coding, ...label, '-movflags', '+faststart', '-y', target],
      planes,
    );
    return;
  }
  // A phone writes each frame's own time, no frames out of order, and a turn to make it upright.
  const ticks = [...footage.times].map((t) => Math.round(t * TICKS));
  const pts = ticks.map((tick, i) => `eq(N\\,${i})*${tick}`).join('+');
  const timing = [
    '-vf',
    `settb=1/${TICKS},setpts=${pts}`,
    '-fps_mode',
    'passthrough',
    '-enc_time_base',
    `1/${TICKS}`,
    '-video_track_timescale',
    String(TICKS),
    '-bf',
    '0',
  ];
  const turn =
    spec.image.rotation === 0 ? [] : ['-metadata:s:v:0', `rotate=${spec.image.rotation}`];
  const wave = join(folder, 'sound.f32');
  const sound = footage.sound;
  if (sound) writeFileSync(wave, bytesOf(sound));
  const soundIn = sound ? ['-f', 'f32le', '-ar', String(SAMPLE_RATE), '-ac', '1', '-i', wave] : [];
  const soundOut = sound ? ['-c:a', 'aac', '-b:a', '192k', '-flags:a', '+bitexact'] : [];
  await run(
    [...input, ...soundIn, ...plain, ...coding, ...timing, ...soundOut, ...label, ...turn].concat([
      '-movflags',
      '+faststart',
      '-y',
      target,
    ]),
    planes,
  );
  if (sound) rmSync(wave);
}

function bytesOf(data: Uint8Array | Uint16Array | Float32Array): Uint8Array {
  return new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
}

/** Luma with both chroma planes at the middle: a monochrome camera. */
function withGreyChroma(luma: Uint8Array | Uint16Array): Uint8Array {
  const out = new Uint8Array((luma.length * 3) / 2).fill(128);
  out.set(luma);
  return out;
}

/** Runs the encoder, feeding `input` chunk by chunk; throws with its message if it fails. */
export async function run(args: readonly string[], input: Iterable<Uint8Array>): Promise<Buffer> {
  const child = spawn(FFMPEG, ['-v', 'error', '-nostdin', ...args], {
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  const output: Buffer[] = [];
  const errors: Buffer[] = [];
  child.stdout.on('data', (chunk: Buffer) => output.push(chunk));
  child.stderr.on('data', (chunk: Buffer) => errors.push(chunk));
  const ended = new Promise<void>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`encoder ended with ${code}: ${Buffer.concat(errors).toString()}`));
    });
  });
  // A child that stops early closes its end of the pipe; `ended` then says why.
  await Promise.all([pipeline(Readable.from(input), child.stdin).catch(() => {}), ended]);
  return Buffer.concat(output);
}
