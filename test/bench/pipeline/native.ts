import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { peakDuring } from '../resident';
import type { BenchClip } from './clips';

/** Debian's own: the packages `ffmpeg` and `python3-opencv`. */
const [FFMPEG, PYTHON] = ['/usr/bin/ffmpeg', '/usr/bin/python3'] as const;
const SCRIPT = 'test/bench/pipeline/native.py';

interface NativeTiming {
  readonly seconds: number;
  /** Most memory resident, MiB. */
  readonly peak: number;
  readonly output: string;
}

/** Throws where what the bench is held beside is not installed. */
export function requireNative(): void {
  const works = [
    spawnSync(FFMPEG, ['-version']).status === 0,
    spawnSync(PYTHON, ['-c', 'import cv2']).status === 0,
  ];
  if (works.includes(false)) {
    throw new Error(
      'This bench needs a native ffmpeg and OpenCV for Python: apt-get install ffmpeg python3-opencv',
    );
  }
}

/** Decodes a clip with all cores and drops the frames. */
export const decodeNatively = ({ path }: BenchClip): Promise<NativeTiming> =>
  timed(FFMPEG, ['-v', 'error', '-nostdin', '-i', path, '-map', '0:v', '-f', 'null', '-']);

/** Decodes a clip into the script beside this file. */
export const reduceNatively = ({ path, width, height, bits }: BenchClip): Promise<NativeTiming> =>
  timed(PYTHON, [SCRIPT, path, `${width}`, `${height}`, `${bits}`]);

async function timed(command: string, args: readonly string[]): Promise<NativeTiming> {
  const begun = performance.now();
  const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  const { value, peak } = await peakDuring(child.pid ?? 0, ended(child));
  return { seconds: (performance.now() - begun) / 1000, peak, output: value };
}

function ended(child: ChildProcess): Promise<string> {
  const [out, errors]: [Buffer[], Buffer[]] = [[], []];
  child.stdout?.on('data', (chunk: Buffer) => out.push(chunk));
  child.stderr?.on('data', (chunk: Buffer) => errors.push(chunk));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve(Buffer.concat(out).toString().trim());
      else reject(new Error(`${child.spawnfile} ended with ${code}: ${Buffer.concat(errors)}`));
    });
  });
}
