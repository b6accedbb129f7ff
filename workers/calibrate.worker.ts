import type { FrameRange } from '../src/core/film';
import { browserPlatform } from '../src/footage/browser';
import { openFootage } from '../src/footage/open';
import type { FootageFile, FrameSource } from '../src/footage/source';
import { loadVision } from '../src/image/opencv/vision';
import type { CalibrateApi } from '../src/protocol/calibrate';
import { lineTimeFromLamp } from '../src/reduction/calibrateClock';
import { lensFromEdges } from '../src/reduction/calibrateLens';
import { lensFromPictures } from '../src/reduction/lensFromPictures';
import { serve } from './serve';

/** What is read off frames counts only if they are undamaged. */
async function reading<T>(
  files: readonly FootageFile[],
  use: (source: FrameSource) => Promise<T>,
): Promise<T> {
  const source = await openFootage(files, browserPlatform);
  const asked: FrameRange[] = [];
  const frames: FrameSource['frames'] = (range, signal) => {
    asked.push(range);
    return source.frames(range, signal);
  };
  try {
    const found = await use({ ...source, frames });
    await source.check?.(asked);
    return found;
  } finally {
    await source.close();
  }
}

const api: CalibrateApi = {
  lineTime: (files, question, onShare) =>
    reading(files, async (source) => ({
      info: source.info,
      report: await lineTimeFromLamp(source, question, onShare),
    })),
  lensFromBoards: (files, size, onShare) =>
    reading(files, async (source) => {
      const found = await lensFromPictures(source, size, await loadVision(), onShare);
      return { ...found, info: source.info };
    }),
  lensFromEdges: async (frame, edges) => lensFromEdges(frame, edges),
};

serve(api);
