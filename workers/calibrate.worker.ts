import { expose } from 'comlink';
import { browserPlatform } from '../src/footage/browser';
import { openFootage } from '../src/footage/open';
import type { FootageFile, FrameSource } from '../src/footage/source';
import type { CalibrateApi } from '../src/protocol/calibrate';
import { carryReasons } from '../src/protocol/errors';
import { lineTimeFromLamp } from '../src/reduction/calibrateClock';

async function reading<T>(
  files: readonly FootageFile[],
  use: (source: FrameSource) => Promise<T>,
): Promise<T> {
  const source = await openFootage(files, browserPlatform);
  try {
    return await use(source);
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
};

carryReasons();
expose(api);
