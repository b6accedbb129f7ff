import type { AudioTrack } from '../../core/film';
import { ExitframeError } from '../../core/reason';
import type { Clip } from './clip';
import { runCore, textOutput } from './core';
import { listPackets } from './probe';

/**
 * The sound track on the film's clock, channels averaged; null where there is none. Both streams' times are the container's
 * own after its edit lists, so what the encoder put in front (priming) is already cut off.
 *
 * Samples follow one another as recorded; where the container's times leave a hole, it stays silent.
 * Always by ffmpeg: one way that is the same in the browser and on the command line.
 * Throws `soundUndecodable`.
 */
export async function readSound(clip: Clip, signal?: AbortSignal): Promise<AudioTrack | null> {
  const { module, reader } = clip;
  const { video, sound } = clip.contents;
  if (video === null || sound === null) return null;
  signal?.throwIfAborted();
  const { packets } = await listPackets(module, reader, video.index);
  const firstFrame =
    Math.min(...packets.map(({ pts, dts }) => pts ?? dts ?? 0)) / video.ticksPerSecond;
  signal?.throwIfAborted();

  const bytes: Uint8Array[] = [];
  const blocks = textOutput();
  const share = 1 / sound.channels;
  const mix = Array.from({ length: sound.channels }, (_, c) => `${share}*c${c}`).join('+');
  const output = ['-map', `0:${sound.index}`, '-af', `pan=mono|c0=${mix}`, '-c:a', 'pcm_f32le'];
  const { exitCode, log } = await runCore(module, {
    program: 'ffmpeg',
    args: [
      '-v',
      'error',
      '-copyts',
      '-i',
      '/in/clip',
      ...output,
      '-f',
      'f32le',
      '/out/samples',
    ].concat([...output, '-f', 'framecrc', '/out/blocks']),
    inputs: { clip: reader },
    outputs: { samples: (part) => bytes.push(part.slice()), blocks: blocks.take },
  });
  if (exitCode !== 0) {
    throw new ExitframeError(
      'soundUndecodable',
      `The sound track could not be decoded: ${log.at(-1) ?? 'no reason given'}.`,
      'Go on without the sound.',
    );
  }
  const listing = blocks.text();
  const sampleRate = Number(/^#sample_rate 0: (\d+)$/m.exec(listing)?.[1] ?? sound.sampleRate);
  // Two times, each rounded to a tick, may disagree by one.
  const slack = sampleRate / sound.ticksPerSecond + 1;
  const placed = placeBlocks(join(bytes), blocksOf(listing), slack);
  return {
    samples: placed.samples,
    sampleRate,
    firstSampleTime: placed.start / sampleRate - firstFrame,
  };
}

interface Block {
  /** Presentation time in samples. */
  readonly start: number;
  readonly length: number;
}

const BYTES_A_SAMPLE = 4;

/** Blocks of a `framecrc` listing, whose ticks are samples. */
function blocksOf(listing: string): Block[] {
  return listing
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(',').map(Number))
    .map((fields) => ({
      start: fields[2] as number,
      length: (fields[4] as number) / BYTES_A_SAMPLE,
    }));
}

function join(parts: readonly Uint8Array[]): Float32Array {
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return new Float32Array(whole.buffer);
}

/**
 * Sets the blocks of `stream` one behind the other, or where their own times say when that is more
 * than `slack` samples off.
 */
export function placeBlocks(
  stream: Float32Array,
  blocks: readonly Block[],
  slack: number,
): { samples: Float32Array; start: number } {
  const start = blocks[0]?.start ?? 0;
  const places: number[] = [];
  let end = start;
  for (const block of blocks) {
    const place = Math.abs(block.start - end) > slack ? block.start : end;
    places.push(place);
    end = place + block.length;
  }
  const last = Math.max(start, ...places.map((place, i) => place + (blocks[i] as Block).length));
  const samples = new Float32Array(last - start);
  let read = 0;
  blocks.forEach(({ length }, i) => {
    const place = Math.max(0, (places[i] as number) - start);
    samples.set(stream.subarray(read, read + length), place);
    read += length;
  });
  return { samples, start };
}
