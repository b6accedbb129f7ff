import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { bytesOf, run } from './ffmpeg';
import { encodePhone } from './phone';
import type { ClipSpec } from './scenario';

const LABEL = 'Rendered sample clip of an invented shot; no camera was there.';

/** Frames as coded (before rotation): 8-bit luma, or 16-bit grey for an image sequence. */
export interface Footage {
  readonly width: number;
  readonly height: number;
  readonly frames: readonly (Uint8Array | Uint16Array)[];
  /** Clockwise turn that makes them upright, degrees. */
  readonly rotation: 0 | 90;
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
      const coding = ['-c:v', 'mjpeg', '-qmin', '1', '-q:v', String(spec.coding.quality)];
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
      const target = join(folder, 'clip.mp4');
      const coding = ['-c:v', 'libx264', '-preset', 'slow', '-crf', String(spec.coding.crf)];
      const common = [...plain, ...coding, '-color_range', 'tv', ...label];
      if (footage.times) {
        await encodePhone(input, common, planes, { ...footage, times: footage.times }, target);
      } else {
        await run([...input, ...common, '-movflags', '+faststart', '-y', target], planes);
      }
      return ['clip.mp4'];
    }
  }
}

/** Luma with both chroma planes at the middle: a monochrome camera. */
function withGreyChroma(luma: Uint8Array | Uint16Array): Uint8Array {
  const out = new Uint8Array((luma.length * 3) / 2).fill(128);
  out.set(luma);
  return out;
}
