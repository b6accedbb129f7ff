import { transcode } from '../codec';
import type { Coding } from './stage';

/** Frames as they are after coding and decoding; grey values are the codec's luma, not rescaled. */
export async function codeAndDecode(
  frames: readonly Uint8Array[],
  width: number,
  height: number,
  coding: Coding,
): Promise<Uint8Array[]> {
  const area = width * height;
  // Luma, and colour planes of half the size each way: grey.
  const raw = new Uint8Array(frames.length * 1.5 * area).fill(128);
  frames.forEach((grey, i) => {
    raw.set(grey, i * 1.5 * area);
  });
  const [pixels, encoder] =
    coding.codec === 'h264'
      ? ['yuv420p', ['libx264', '-preset', 'veryfast', '-crf', `${coding.crf}`, '-g', '30']]
      : ['yuvj420p', ['mjpeg', '-q:v', `${coding.quality}`]];
  const input = ['-f', 'rawvideo', '-pix_fmt', pixels, '-s', `${width}x${height}`];
  const film = await transcode(
    [
      ...[...input, '-framerate', '30', '-i', '/in/from', '-pix_fmt', pixels, '-threads', '1'],
      ...['-c:v', ...encoder, '-f', 'nut', '/out/to'],
    ],
    raw,
  );
  const luma = await transcode(
    ['-i', '/in/from', '-vf', 'extractplanes=y', '-f', 'rawvideo', '/out/to'],
    film,
  );
  if (luma.length !== frames.length * area) {
    throw new Error(`The coder gave ${luma.length / area} frames of ${frames.length}.`);
  }
  return frames.map((_, i) => luma.slice(i * area, (i + 1) * area));
}
