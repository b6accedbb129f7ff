import { buildClock } from '../../src/clock/clock';
import type { AudioTrack, FootageInfo } from '../../src/core/film';
import type { GreyFrame } from '../../src/core/frame';
import { type Reason, reasonOf } from '../../src/core/reason';
import { exampleShot } from '../fixtures/shot';

/** Opened footage, in this thread or by the page's film worker. */
export interface Film {
  readonly info: FootageInfo;
  timestamps(): Promise<Float64Array | null>;
  frames(): AsyncIterable<GreyFrame>;
  audio(): Promise<AudioTrack | null>;
}

/** What came of reading footage to its end: plain data. */
export type Look =
  | { readonly refused: Reason }
  | {
      /** What a measurement depends on besides the pixels. */
      readonly facts: string;
      /** Of each frame's grey values and size. */
      readonly frames: readonly string[];
      readonly times: readonly number[] | null;
      readonly sound: string;
      /** Codes of what the user is told of the film. */
      readonly warnings: readonly string[];
    };

async function digest(bytes: ArrayBufferView): Promise<string> {
  const { buffer, byteOffset, byteLength } = bytes;
  const view = new Uint8Array(buffer as ArrayBuffer, byteOffset, byteLength);
  const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', view));
  return Array.from(sum.subarray(0, 8), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

const soundOf = async (film: Film): Promise<string> => {
  try {
    const track = await film.audio();
    if (track === null) return 'none';
    if (track.samples.some((value) => Number.isNaN(value))) throw new Error('sound without number');
    return `${await digest(track.samples)} ${track.sampleRate} ${track.firstSampleTime}`;
  } catch (error) {
    return `refused: ${reasonOf(error).code}`;
  }
};

/** Opens footage and reads all of it. */
export async function look(open: () => Promise<Film>): Promise<Look> {
  try {
    const film = await open();
    const { info } = film;
    const frames: string[] = [];
    for await (const { data, width, height, white } of film.frames()) {
      if (data.length !== width * height) throw new Error('a frame of another size than it says');
      frames.push(`${await digest(data)} ${width} x ${height} to ${white}`);
    }
    if (frames.length !== info.frameCount) throw new Error('other frames than were told of');
    const times = await film.timestamps();
    const clock = buildClock(exampleShot().timing, info, times);
    if (!clock.ok) return { refused: clock.reason };
    const { rotation, pixelAspect, levels, interlaced, bitDepth, width, height } = info;
    return {
      facts: JSON.stringify({ rotation, pixelAspect, levels, interlaced, bitDepth, width, height }),
      frames,
      times: times && [...times],
      sound: await soundOf(film),
      warnings: clock.value.warnings.map(({ code }) => code),
    };
  } catch (error) {
    return { refused: reasonOf(error) };
  }
}
