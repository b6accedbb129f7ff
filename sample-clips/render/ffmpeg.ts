import { spawn } from 'node:child_process';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/** Debian's native build: used only to make the clips and their frame hashes. */
const FFMPEG = '/usr/bin/ffmpeg';

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

export function bytesOf(data: Uint8Array | Uint16Array | Float32Array): Uint8Array {
  return new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
}
