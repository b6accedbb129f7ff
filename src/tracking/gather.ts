import type { Candidate } from '../image/types';
import type { Sighting } from './path';
import type { FrameCandidates, Place, TrackPrior } from './types';

/** Standard deviation of a ball's apparent size, as a share; scale and lighting move it by some percent. */
const SIZE_SCATTER = 0.1;
/** A thing of quite another size still counts this much: the scale may be wrong. */
const LEAST_AGREEMENT = 0.15;
/** What counts of a thing without an edge that could be followed. */
const WITHOUT_RIM = 0.5;
/** An edge this sharp or sharper is a thing's own, not that of mist or of a shadow. */
const SHARP = 0.5;
/** A candidate within this many radii of a named place is the ball there. */
const AT_SEED = 1;

/** How much a candidate looks like the ball, 0..1. */
export function likenessOf({ score, rim }: Candidate): number {
  if (rim === undefined) return WITHOUT_RIM * score;
  const agreement = Math.exp(-0.5 * ((rim.size - 1) / SIZE_SCATTER) ** 2);
  const shape = 0.4 + 0.6 * rim.round;
  const edge = 0.5 + 0.5 * Math.min(1, rim.sharp / SHARP);
  return score * Math.max(LEAST_AGREEMENT, agreement) * shape * edge;
}

/** Candidates of each frame, in order of time, with what a person said of it; frames without any are left out. */
export function gather(frames: readonly FrameCandidates[], prior: TrackPrior): Sighting[][] {
  const placed = new Map(prior.placed.map((place) => [place.frame, place]));
  const seeds = new Map(prior.seeds.map((place) => [place.frame, place]));
  return [...frames]
    .sort((a, b) => a.frame - b.frame)
    .map(({ frame, candidates }): Sighting[] => {
      const byHand = placed.get(frame);
      if (byHand !== undefined) return [given(byHand, prior)];
      const all = candidates.map(
        (candidate, index): Sighting => ({
          frame,
          time: prior.timeOf(frame, candidate.x, candidate.y),
          x: candidate.x,
          y: candidate.y,
          likeness: likenessOf(candidate),
          score: candidate.score,
          visible: candidate.visible,
          rim: candidate.rim ?? null,
          candidate: index,
        }),
      );
      const seed = seeds.get(frame);
      if (seed === undefined) return all;
      const there = all.filter(
        ({ x, y }) => Math.hypot(x - seed.x, y - seed.y) < AT_SEED * prior.radius,
      );
      return there.length > 0 ? there : [given(seed, prior)];
    })
    .filter((inFrame) => inFrame.length > 0);
}

/** A place that stands in for a candidate. */
const given = ({ frame, x, y }: Place, prior: TrackPrior): Sighting => ({
  frame,
  time: prior.timeOf(frame, x, y),
  x,
  y,
  likeness: 1,
  score: 1,
  visible: 1,
  rim: null,
  candidate: -1,
});
