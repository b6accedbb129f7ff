import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { run } from './ffmpeg';

/** What a native decoder makes of the footage, for checking other decoders frame by frame. */
export interface FrameHashes {
  readonly recipe: string;
  readonly frameCount: number;
  /** Size and grey plane as coded, before any rotation. */
  readonly codedWidth: number;
  readonly codedHeight: number;
  readonly bytesPerPixel: 1 | 2;
  /** Presentation times from the container, s; null for an image sequence. */
  readonly timestamps: readonly number[] | null;
  /** First 16 hexadecimal digits of the SHA-256 of each frame's grey plane, display order. */
  readonly hashes: readonly string[];
}

export async function hashFrames(
  folder: string,
  files: readonly string[],
  size: { readonly width: number; readonly height: number },
): Promise<FrameHashes> {
  const sequence = files.length > 1;
  const bytesPerPixel = sequence ? 2 : 1;
  const first = files[0] as string;
  const source = sequence
    ? ['-start_number', '0', '-i', join(folder, 'frame-%04d.png')]
    : ['-i', join(folder, first)];
  const planes = sequence
    ? ['-f', 'rawvideo', '-pix_fmt', 'gray16le']
    : ['-vf', 'extractplanes=y', '-fps_mode', 'passthrough', '-f', 'rawvideo'];
  const bytes = await run(['-noautorotate', ...source, '-map', '0:v:0', ...planes, 'pipe:1'], []);
  const frameBytes = size.width * size.height * bytesPerPixel;
  const frameCount = bytes.length / frameBytes;
  return {
    recipe: sequence
      ? 'ffmpeg -noautorotate -i frame-%04d.png -map 0:v:0 -f rawvideo -pix_fmt gray16le - ; SHA-256 of each frame (little-endian samples), first 16 hexadecimal digits'
      : 'ffmpeg -noautorotate -i CLIP -map 0:v:0 -vf extractplanes=y -fps_mode passthrough -f rawvideo - ; SHA-256 of each frame, first 16 hexadecimal digits',
    frameCount,
    codedWidth: size.width,
    codedHeight: size.height,
    bytesPerPixel,
    timestamps: sequence ? null : timestamps(join(folder, first)),
    hashes: Array.from({ length: frameCount }, (_, i) =>
      createHash('sha256')
        .update(bytes.subarray(i * frameBytes, (i + 1) * frameBytes))
        .digest('hex')
        .slice(0, 16),
    ),
  };
}

function timestamps(file: string): number[] {
  const show = ['-select_streams', 'v:0', '-show_entries', 'frame=pts:stream=time_base'];
  const text = execFileSync('/usr/bin/ffprobe', ['-v', 'error', ...show, '-of', 'json', file]);
  const found = JSON.parse(text.toString()) as {
    frames: { pts: number }[];
    streams: { time_base: string }[];
  };
  const [num = 0, den = 1] = (found.streams[0]?.time_base ?? '').split('/').map(Number);
  return found.frames.map((frame) => (frame.pts * num) / den);
}
