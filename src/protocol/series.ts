import type { CountedEntry, GroupSummary } from '../series/groups';
import type { ShotsRead } from '../series/readShots';

/** A file with its path within the folder it was chosen with. */
export interface ChosenFile {
  readonly path: string;
  readonly blob: Blob;
}

/** A thread that reads many shots and works out what they say together. To cancel, end the worker. */
export interface SeriesApi {
  /** Shot and result files into entries of a notebook. `onShare` gets 0..1. */
  read(files: readonly ChosenFile[], onShare: (share: number) => void): Promise<ShotsRead>;
  summarise(
    groups: readonly (readonly CountedEntry[])[],
    coverage: number,
  ): Promise<readonly GroupSummary[]>;
}
