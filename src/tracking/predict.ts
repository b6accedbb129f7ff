import type { ImagePoint, Pixels, Seconds } from '../core/units';
import type { Track } from './types';

/** Rounds of solving for a place whose time depends on the place itself (rolling shutter). */
const SHUTTER_ROUNDS = 3;

/**
 * Where a track's ball is expected in any frame: a straight line through its points at constant speed, by least
 * squares. Good to a few pixels, enough to start a fine search from.
 */
export function predictPath(
  track: Track,
  timeAt: (frame: number, x: Pixels, y: Pixels) => Seconds,
): (frame: number) => ImagePoint {
  const times = track.points.map(({ frame, candidate }) => timeAt(frame, candidate.x, candidate.y));
  const n = times.length;
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / n;
  const t0 = mean(times);
  const x0 = mean(track.points.map(({ candidate }) => candidate.x));
  const y0 = mean(track.points.map(({ candidate }) => candidate.y));
  const spread = times.reduce((sum, t) => sum + (t - t0) ** 2, 0);
  const slope = (pick: (i: number) => number) =>
    spread > 0 ? times.reduce((sum, t, i) => sum + (t - t0) * pick(i), 0) / spread : 0;
  const vx = slope((i) => (track.points[i]?.candidate.x ?? x0) - x0);
  const vy = slope((i) => (track.points[i]?.candidate.y ?? y0) - y0);
  return (frame) => {
    let at: ImagePoint = [x0, y0];
    for (let round = 0; round < SHUTTER_ROUNDS; round++) {
      const dt = timeAt(frame, at[0], at[1]) - t0;
      at = [x0 + vx * dt, y0 + vy * dt];
    }
    return at;
  };
}
