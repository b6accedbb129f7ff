import { expose } from 'comlink';
import { AS_FOUND, type FootageInfo, type Reading } from '../src/core/film';
import { ExitframeError } from '../src/core/reason';
import { browserPlatform } from '../src/footage/browser';
import { freeMemory } from '../src/footage/freeing';
import { sha256 } from '../src/footage/hash';
import { openFootage } from '../src/footage/open';
import { openRaw } from '../src/footage/raw';
import type { FootageFile, FrameSource } from '../src/footage/source';
import type { FilmApi } from '../src/protocol/film';
import { FrameRuns } from './frameRuns';
import { readInThread } from './secondReading';
import { serve } from './serve';
import { startDecoders } from './spanDecoders';
import { transferFrame, transferFrames } from './transferring';

const platform = { ...browserPlatform, readAgain: readInThread, startDecoders };
let film: { source: FrameSource; files: readonly FootageFile[] } | null = null;
const runs = new FrameRuns();
let checking: AbortController | null = null;

function opened(): { source: FrameSource; files: readonly FootageFile[] } {
  if (film === null)
    throw new ExitframeError('noFootage', 'No footage is open.', 'Open a clip first.');
  return film;
}

/** Puts another film, or none, in the place of the open one at once: what is asked meanwhile finds either. */
async function changeFilm(to: typeof film): Promise<void> {
  const closing = film;
  checking?.abort();
  film = to;
  await runs.endAll();
  await closing?.source.close();
}

async function openFilm(files: readonly FootageFile[], reading: Reading): Promise<FootageInfo> {
  // The new film is opened first, so that a file that cannot be read leaves the old one in place.
  const source = await openFootage(files, platform, { reading });
  await changeFilm({ source, files });
  return source.info;
}

const noFrame = (index: number) =>
  new ExitframeError('noFrame', `The film has no frame ${index}.`, undefined, {
    values: { frame: index },
  });

/** Openings run one after the other: the film asked for last is the one that stays. */
let opening: Promise<unknown> = Promise.resolve();

const api: FilmApi = {
  open(files, reading = AS_FOUND) {
    const mine = opening.then(() => openFilm(files, reading));
    opening = mine.catch(() => undefined);
    return mine;
  },
  async preview(file, layout, index) {
    const frames = openRaw(file, layout).frames({ start: index, end: index + 1 });
    for await (const frame of frames) return transferFrame(frame);
    throw noFrame(index);
  },
  timestamps: () => opened().source.timestamps(),
  async frame(index) {
    for await (const frame of opened().source.frames({ start: index, end: index + 1 })) {
      return transferFrame(frame);
    }
    throw noFrame(index);
  },
  startRun: async (range) => runs.start(opened().source, range),
  async next(run, back = []) {
    const takeBack = film?.source.takeBack;
    if (takeBack === undefined) freeMemory(back.map((memory) => new Uint8Array(memory)));
    else takeBack(back);
    return transferFrames(await runs.next(run));
  },
  endRun: (run) => runs.end(run),
  async check(ranges) {
    checking?.abort();
    const mine = new AbortController();
    checking = mine;
    try {
      await opened().source.check?.(ranges, mine.signal);
    } finally {
      if (checking === mine) checking = null;
    }
  },
  endCheck: async () => checking?.abort(),
  audio: () => opened().source.audio(),
  sha256: (onProgress) => sha256(opened().files, onProgress),
  close: () => changeFilm(null),
  attach: async (port) => expose(api, port),
};

serve(api);
