import { browserPlatform } from '../src/footage/browser';
import { openClip } from '../src/footage/ffmpeg/clip';
import { readAgain } from '../src/footage/ffmpeg/secondReading';
import type { SecondReadingApi } from '../src/protocol/secondReading';
import { serve } from './serve';

const api: SecondReadingApi = {
  async read(file, ranges, core) {
    const platform = { ...browserPlatform, loadCore: async () => core };
    return readAgain(await openClip(file, platform), platform, ranges);
  },
};

serve(api);
