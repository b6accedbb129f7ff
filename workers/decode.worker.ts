import { transfer } from 'comlink';
import { ExitframeError } from '../src/core/reason';
import { inBlocks } from '../src/footage/blocks';
import { browserPlatform } from '../src/footage/browser';
import { runCoreAgain } from '../src/footage/ffmpeg/core';
import { copyIn, decodeSpan, type Film } from '../src/footage/ffmpeg/decodeSpan';
import type { DecodeApi } from '../src/protocol/decode';
import { serve } from './serve';

let film: Film | null = null;

const api: DecodeApi = {
  async open(file, facts) {
    const reader = inBlocks(await browserPlatform.reader(file));
    film = { ...facts, reader, run: runCoreAgain(facts.module) };
  },
  async decode(span) {
    if (film === null) {
      throw new ExitframeError('notConnected', 'The decoding thread has no film.');
    }
    const planes = await decodeSpan(film, span, copyIn(film));
    return transfer(
      planes,
      planes.map(({ buffer }) => buffer),
    );
  },
};

serve(api);
