import { rmSync, writeFileSync } from 'node:fs';
import { bytesOf, run } from './ffmpeg';
import { TICKS } from './shutter';
import { SAMPLE_RATE } from './sound';

export interface PhoneFootage {
  /** Each frame's own time, s, on the grid of `TICKS`. */
  readonly times: Float64Array;
  readonly rotation: 0 | 90;
  readonly sound: Float32Array | null;
}

/**
 * An MP4 as a phone writes it: uneven frame times held exactly, no frames out of order, a sound
 * track, and a turn for the player to make it upright. `input` and `common` are encoder arguments.
 */
export async function encodePhone(
  input: readonly string[],
  common: readonly string[],
  planes: readonly Uint8Array[],
  { times, rotation, sound }: PhoneFootage,
  target: string,
): Promise<void> {
  const wave = `${target}.f32`;
  const unturned = `${target}.part.mp4`;
  const pts = Array.from(times, (t, i) => `eq(N\\,${i})*${Math.round(t * TICKS)}`).join('+');
  const timing = [
    ...['-vf', `settb=1/${TICKS},setpts=${pts}`, '-fps_mode', 'passthrough', '-bf', '0'],
    ...['-enc_time_base', `1/${TICKS}`, '-video_track_timescale', String(TICKS)],
  ];
  if (sound) writeFileSync(wave, bytesOf(sound));
  const soundIn = sound ? ['-f', 'f32le', '-ar', String(SAMPLE_RATE), '-ac', '1', '-i', wave] : [];
  const soundOut = sound ? ['-c:a', 'aac', '-b:a', '192k', '-flags:a', '+bitexact'] : [];
  try {
    await run([...input, ...soundIn, ...common, ...timing, ...soundOut, '-y', unturned], planes);
    // The muxer's tag turns anticlockwise, and works only on streams copied.
    const turn = ['-metadata:s:v:0', `rotate=${(360 - rotation) % 360}`];
    const copy = ['-i', unturned, '-c', 'copy', '-fflags', '+bitexact', ...turn];
    const scale = ['-video_track_timescale', String(TICKS), '-movflags', '+faststart'];
    await run([...copy, ...scale, '-y', target], []);
  } finally {
    rmSync(wave, { force: true });
    rmSync(unturned, { force: true });
  }
}
