import { expose } from 'comlink';
import { carryReasons } from '../src/protocol/errors';
import type { SeriesApi } from '../src/protocol/series';
import { summariseGroups } from '../src/series/groups';
import { readShots } from '../src/series/readShots';

const api: SeriesApi = {
  read: (files, onShare) =>
    readShots(
      files.map(({ path, blob }) => ({ path, text: () => blob.text() })),
      onShare,
    ),
  summarise: async (groups, coverage) => summariseGroups(groups, coverage),
};

carryReasons();
expose(api);
