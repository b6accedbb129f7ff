import type { ImagePoint } from '../core/units';
import { againstPrior, SPEED_CHANGE, speedChange } from './judge';
import { along, fitPath, type Run, type Sighting, throughTwo } from './path';
import type { Path, TrackPrior } from './types';

/** Frame gaps over which two sightings are tried as one motion: short for two frames, long for accuracy. */
const GAPS = [1, 2, 3, 5, 8, 13, 21, 34] as const;
/** Starting motions refined in full. */
const REFINED = 12;
/** At least one of the two sightings a motion is started from is this much like a ball. */
const LIKE_A_BALL = 0.1;
/** How far a sighting may lie from the path, in radii: a half-hidden ball is sighted off its centre. */
export const NEAR = 0.6;
export const MOST_RIVALS = 4;

/**
 * Distinct runs, best supported first, no sighting in two of them. Deterministic: motions through pairs of sightings
 * are compared by how many frames they explain, the best are refined by least squares with a slow change of speed.
 */
export function searchRuns(sightings: readonly (readonly Sighting[])[], prior: TrackPrior): Run[] {
  const runs: Run[] = [];
  let left = sightings;
  for (let round = 0; round <= MOST_RIVALS; round++) {
    const run = bestRun(left, prior);
    if (run === null || run.sightings.length < 2) break;
    runs.push(run);
    const taken = new Set(run.sightings);
    left = left
      .map((inFrame) => inFrame.filter((s) => !taken.has(s)))
      .filter((inFrame) => inFrame.length > 0);
  }
  return runs;
}

function bestRun(sightings: readonly (readonly Sighting[])[], prior: TrackPrior): Run | null {
  const starts: Run[] = [];
  const view = viewOf(sightings, prior.radius);
  for (let i = 0; i < sightings.length; i++) {
    for (const gap of GAPS) {
      const later = sightings[i + gap];
      if (later === undefined) break;
      for (const a of sightings[i] as readonly Sighting[]) {
        for (const b of later) {
          if (Math.max(a.likeness, b.likeness) < LIKE_A_BALL) continue;
          const path = throughTwo(a, b);
          if (path === null || !plausible(path, a, b, prior)) continue;
          starts.push(supported(path, sightings, prior, inView(path, view)));
        }
      }
    }
  }
  starts.sort(betterFirst);
  let best: Run | null = null;
  for (const start of starts.slice(0, REFINED)) {
    const run = refine(start, sightings, prior);
    if (best === null || betterFirst(run, best) < 0) best = run;
  }
  return best;
}

/** A run that passes the places a person named goes before one that does not. */
const betterFirst = (a: Run, b: Run): number =>
  b.seedsPassed - a.seedsPassed || b.support - a.support;

/** Whether two sightings may be one ball's, judged by the motion through them. */
function plausible(path: Path, a: Sighting, b: Sighting, prior: TrackPrior): boolean {
  // A step smaller than this share of the radius a frame is a thing that stands still and flickers.
  const moved = Math.hypot(b.x - a.x, b.y - a.y);
  return moved >= 0.02 * prior.radius * (b.frame - a.frame) && againstPrior(path, prior) === null;
}

/** Best sighting of each frame near the path, and what they come to. */
function supported(
  path: Path,
  sightings: readonly (readonly Sighting[])[],
  prior: TrackPrior,
  [from, to]: readonly [number, number] = [0, sightings.length],
): Run {
  const chosen: Sighting[] = [];
  const reach = NEAR * prior.radius;
  let support = 0;
  for (let i = from; i < to; i++) {
    const inFrame = sightings[i] as readonly Sighting[];
    let best: Sighting | null = null;
    let most = 0;
    for (const s of inFrame) {
      const [x, y] = along(path, s.time);
      const d = Math.hypot(s.x - x, s.y - y) / reach;
      const worth = d < 1 ? s.likeness * (1 - d * d) : 0;
      if (worth > most) {
        most = worth;
        best = s;
      }
    }
    if (best !== null) {
      chosen.push(best);
      support += most;
    }
  }
  const named = [...prior.placed, ...prior.seeds];
  const seedsPassed = named.filter(({ frame }) => chosen.some((s) => s.frame === frame)).length;
  return { path, sightings: chosen, support, seedsPassed };
}

/** The rectangle that holds all sightings, with a margin, and the time of each frame's first. */
interface InView {
  readonly low: ImagePoint;
  readonly high: ImagePoint;
  readonly times: Float64Array;
}

function viewOf(sightings: readonly (readonly Sighting[])[], margin: number): InView {
  const low: [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { x, y } of sightings.flat()) {
    low[0] = Math.min(low[0], x - margin);
    low[1] = Math.min(low[1], y - margin);
    high[0] = Math.max(high[0], x + margin);
    high[1] = Math.max(high[1], y + margin);
  }
  return { low, high, times: Float64Array.from(sightings, (inFrame) => inFrame[0]?.time ?? 0) };
}

/** The frames in which a uniform motion is in view: a ball crosses a long film in a small part of it. */
function inView(path: Path, { low, high, times }: InView): [number, number] {
  let start = Number.NEGATIVE_INFINITY;
  let end = Number.POSITIVE_INFINITY;
  for (const k of [0, 1] as const) {
    const v = path.velocity[k];
    if (v === 0) continue;
    const a = path.time + (low[k] - path.origin[k]) / v;
    const b = path.time + (high[k] - path.origin[k]) / v;
    start = Math.max(start, Math.min(a, b));
    end = Math.min(end, Math.max(a, b));
  }
  // A frame more each way: with a rolling shutter its lines differ in time.
  return [
    Math.max(0, firstAfter(times, start) - 1),
    Math.min(times.length, firstAfter(times, end) + 1),
  ];
}

/** Index of the first of the rising times that is at least `time`. */
function firstAfter(times: Float64Array, time: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] as number) < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Alternates least squares and choice of sightings, uniform motion first, then with a change of speed. */
function refine(start: Run, sightings: readonly (readonly Sighting[])[], prior: TrackPrior): Run {
  let best = start;
  for (const curved of [false, false, true, true, true, true]) {
    const { path, sightings: chosen } = best;
    const weights = chosen.map((s) => {
      const [x, y] = along(path, s.time);
      const d = Math.hypot(s.x - x, s.y - y) / (2 * NEAR * prior.radius);
      return s.likeness * s.visible * Math.max(0.01, 1 - d * d) ** 2;
    });
    const fitted = fitPath(chosen, weights, curved);
    if (fitted === null || (curved && speedChange(fitted, chosen) > SPEED_CHANGE)) continue;
    const next = supported(fitted, sightings, prior);
    if (betterFirst(next, best) <= 0) best = next;
  }
  return best;
}
