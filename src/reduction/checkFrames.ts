import type { Cancellation } from '../core/cancellation';
import type { FrameRange } from '../core/film';
import { type Reason, reasonOf } from '../core/reason';
import type { FrameSupply } from './work';

/** Reasons that say nothing of the film: without the check it may still be sound. */
const NOT_OF_THE_FILM: readonly string[] = [
  ...['decoderMissing', 'webAssemblyRefused', 'outOfMemory'],
  ...['threadFailed', 'threadNotFetched', 'threadEnded'],
];

/** Frames being held against a second decoder's while they are measured. */
export interface FrameCheck {
  /** Ends the measuring too once damage is found. */
  readonly cancellation: Cancellation;
  /** Why nothing could be checked; null: nothing is wrong. Throws what is wrong with the film. */
  readonly over: Promise<Reason | null>;
}

/** Null: the film's decoder tells itself of what it cannot read. */
export function checkFrames(
  film: FrameSupply,
  ranges: readonly FrameRange[],
  cancellation: Cancellation,
): FrameCheck | null {
  if (film.check === undefined) return null;
  let damage: unknown = null;
  const over = film.check(ranges).then(
    () => null,
    (error: unknown) => {
      const reason = reasonOf(error);
      if (NOT_OF_THE_FILM.includes(reason.code)) return reason;
      damage = error;
      throw error;
    },
  );
  over.catch(() => {}); // met by whoever waits for it, or by the measuring
  return {
    over,
    cancellation: {
      get aborted() {
        return cancellation.aborted;
      },
      throwIfAborted() {
        cancellation.throwIfAborted();
        if (damage !== null) throw damage;
      },
    },
  };
}
