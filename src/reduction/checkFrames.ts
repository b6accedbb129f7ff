import type { Cancellation } from '../core/cancellation';
import type { FrameRange } from '../core/film';
import { type Reason, reasonOf } from '../core/reason';
import { without } from './passage';
import type { FrameSupply } from './work';

/** Reasons that say nothing of the film: without the check it may still be sound. */
const NOT_OF_THE_FILM: readonly string[] = [
  ...['decoderMissing', 'webAssemblyRefused', 'outOfMemory'],
  ...['threadFailed', 'threadNotFetched', 'threadEnded'],
];

/** Frames being held against a second decoder's while others are still decoded, and while they are measured. */
export interface FrameCheck {
  /** Ends the measuring too once damage is found. */
  readonly cancellation: Cancellation;
  /** Frames given out by now; those that were named before are not checked again. */
  add(ranges: readonly FrameRange[]): void;
  /** Why not all could be checked; null: nothing is wrong. Throws what is wrong with the film. */
  over(): Promise<Reason | null>;
}

/** Null: the film's decoder tells itself of what it cannot read. */
export function checkFrames(film: FrameSupply, cancellation: Cancellation): FrameCheck | null {
  const { check } = film;
  if (check === undefined) return null;
  let damage: unknown = null;
  let named: readonly FrameRange[] = [];
  let waiting: readonly FrameRange[] = [];
  let over: Promise<Reason | null> = Promise.resolve(null);
  /** All that has come to wait while others were read. */
  const readWaiting = async (): Promise<Reason | null> => {
    const ranges = waiting;
    waiting = [];
    if (ranges.length === 0) return null;
    return check(ranges).then(
      () => null,
      (error: unknown) => {
        const reason = reasonOf(error);
        if (NOT_OF_THE_FILM.includes(reason.code)) return reason;
        damage = error;
        throw error;
      },
    );
  };
  return {
    add(ranges) {
      const fresh = without(ranges, named);
      if (fresh.length === 0) return;
      named = [...named, ...fresh];
      waiting = [...waiting, ...fresh];
      over = over.then((unchecked) => unchecked ?? readWaiting());
      over.catch(() => {}); // met by whoever waits for it, or by the measuring
    },
    over: () => over,
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
