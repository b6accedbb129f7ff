import type { ImagePoint } from '../core/units';
import { along } from './path';
import type { TimeOf, Track } from './types';

const MOST_ROUNDS = 100;
/** px */
const SETTLED = 1e-3;

/** Where the track's path has the centre in any frame, also before, between and after its points. */
export function predictPath(track: Track, timeOf: TimeOf): (frame: number) => ImagePoint {
  return (frame) => {
    // The line the ball is on sets the time, and the time the line. The ball is slower than the
    // readout, so each round comes nearer.
    let at = track.path.origin;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const next = along(track.path, timeOf(frame, at[0], at[1]));
      const moved = Math.hypot(next[0] - at[0], next[1] - at[1]);
      at = next;
      if (moved < SETTLED) break;
    }
    return at;
  };
}
