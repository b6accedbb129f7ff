import type { ImagePoint } from '../core/units';
import { along } from './path';
import type { TimeOf, Track } from './types';

/** Where the track's path has the centre in any frame, also before, between and after its points. */
export function predictPath(track: Track, timeOf: TimeOf): (frame: number) => ImagePoint {
  return (frame) => {
    // The line the ball is on sets the time, and the time the line: three rounds settle it, as the
    // ball moves by a small part of a line while a line is read.
    let at = track.path.origin;
    for (let round = 0; round < 4; round++) at = along(track.path, timeOf(frame, at[0], at[1]));
    return at;
  };
}
