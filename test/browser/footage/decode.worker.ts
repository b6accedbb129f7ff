import { expose } from 'comlink';
import {
  AS_FOUND,
  type AudioTrack,
  type FootageInfo,
  type FrameRange,
} from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { type Reason, reasonOf } from '../../../src/core/reason';
import { browserPlatform } from '../../../src/footage/browser';
import { sha256 } from '../../../src/footage/hash';
import { openFootage } from '../../../src/footage/open';
import type { FootageFile, FrameSource } from '../../../src/footage/source';

/** First 16 hexadecimal digits of the SHA-256 of a grey plane. */
async function hashOf(data: Uint8Array | Uint16Array): Promise<string> {
  const bytes = new Uint8Array(data.buffer as ArrayBuffer, data.byteOffset, data.byteLength);
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest.subarray(0, 8), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

interface SeenFrame {
  readonly index: number;
  readonly width: number;
  readonly height: number;
  readonly white: number;
  readonly deep: boolean;
  readonly hash: string;
}

let source: FrameSource | null = null;
const opened = (): FrameSource => {
  if (source === null) throw new Error('nothing is open');
  return source;
};

/** Decoding in a worker, where the tool does it; nothing but what `FrameSource` gives. */
const api = {
  async open(files: FootageFile[], withWebCodecs = true, reading = AS_FOUND): Promise<FootageInfo> {
    await source?.close();
    const webCodecs = withWebCodecs && browserPlatform.webCodecs;
    source = await openFootage(files, { ...browserPlatform, webCodecs }, { reading });
    return source.info;
  },
  async frames(range?: FrameRange): Promise<SeenFrame[]> {
    const seen: SeenFrame[] = [];
    const whole = { start: 0, end: opened().info.frameCount };
    for await (const frame of opened().frames(range ?? whole)) {
      const { index, width, height, white, data } = frame;
      const deep = data instanceof Uint16Array;
      seen.push({ index, width, height, white, deep, hash: await hashOf(data) });
    }
    return seen;
  },
  /** All frames, whole: for small films. */
  async greyFrames(): Promise<GreyFrame[]> {
    const frames: GreyFrame[] = [];
    const whole = { start: 0, end: opened().info.frameCount };
    for await (const frame of opened().frames(whole)) frames.push(frame);
    return frames;
  },
  timestamps: async () => opened().timestamps(),
  audio: async (): Promise<AudioTrack | null> => opened().audio(),
  sha256: (files: FootageFile[]) => sha256(files),
  /** Why opening or reading fails; null where it does not. */
  async failure(files: FootageFile[]): Promise<Reason | null> {
    try {
      await api.open(files);
      await api.frames();
      return null;
    } catch (error) {
      return reasonOf(error);
    }
  },
  /** Indices seen until a cancel at frame `at` took hold, and what was thrown. */
  async cancelAt(at: number): Promise<{ seen: number[]; reason: Reason }> {
    const cancel = new AbortController();
    const seen: number[] = [];
    try {
      const whole = { start: 0, end: opened().info.frameCount };
      for await (const { index } of opened().frames(whole, cancel.signal)) {
        seen.push(index);
        if (index === at) cancel.abort();
      }
      throw new Error('not cancelled');
    } catch (error) {
      return { seen, reason: reasonOf(error) };
    }
  },
  close: async () => source?.close(),
};

export type DecodeApi = typeof api;
expose(api);
