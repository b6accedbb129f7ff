import type { SeriesApi } from '../src/protocol/series';
import { summariseGroups } from '../src/series/groups';
import { readShots } from '../src/series/readShots';
import { serve } from './serve';

const api: SeriesApi = {
  read: (files, onShare) =>
    readShots(
      files.map(({ path, blob }) => ({ path, text: () => blob.text() })),
      onShare,
    ),
  summarise: async (groups, coverage) => summariseGroups(groups, coverage),
};

serve(api);
