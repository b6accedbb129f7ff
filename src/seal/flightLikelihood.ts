/** How far out the foremost piece is seen in a frame: px; times in frame intervals. */
export interface ReachSeen {
  readonly time: number;
  readonly reach: number;
}

export interface FlightOfPieces {
  /** Frames from the first open one on, up to the last in which the foremost piece is in view. */
  readonly seen: readonly ReachSeen[];
  /** Nothing is seen farther out than this, px. */
  readonly limit: number;
  /** The film's reach when last seen whole, and how fast it grew, px a frame interval. */
  readonly whole: ReachSeen;
  readonly speed: number;
  /** Whether it was at rest then: it bulged unseen before it burst. */
  readonly still: boolean;
  /** Share of the exposure a place must be covered to count, from the level of the edge over the film's strength. */
  readonly covered: number;
  readonly exposure: number;
  /** Half the width of the film, px. */
  readonly halfAperture: number;
}

/** The way in which air takes all but 1/e of a piece's speed, in half apertures: paper and foil. */
const SLOWING = 5;
/** Speeds, in half apertures a frame interval, each as likely in its logarithm. */
const SLOWEST = 0.04;
const FASTEST = 4;
/** Speeds summed over: about the one the last frame wants, so many of its standard uncertainties to each side. */
const SPEED_STEP = 0.5;
const SPEED_STEPS = 5;
/** The foremost piece may have started behind the film's foremost point: by shares of its height, and their weights. */
const BEHIND = [
  [0, 0.4],
  [0.15, 0.27],
  [0.35, 0.18],
  [0.6, 0.1],
  [0.9, 0.05],
] as const;
/** How high a film that was last seen at rest may have stood when it burst, in half apertures, each as likely. */
const UNSEEN_HEIGHTS = [0.05, 0.2, 0.35, 0.5, 0.65] as const;
/**
 * The piece may have come loose only as the tear reached it, past the time the tear needs to show at all: by shares of
 * the time it takes, and their weights.
 */
const LOOSE = [
  [0, 0.6],
  [0.1, 0.3],
  [0.3, 0.1],
] as const;
/** No piece stays on so long after the film tore, frame intervals. */
const MOST_LOOSE = 2;
/** Of a piece so near the end of the view some is beyond it already, px: its edge says less of how far it flew. */
export const VIEW_END = 5;
/** Edge's own uncertainty, px, and that of the way, as a share. */
const EDGE_U = 0.35;
const WAY_U = 0.03;
const ODD = 0.05;
/** A film grows on at this many times its last speed, give or take a share. */
const ONWARDS = 1.15;
const ONWARDS_U = 0.2;

/**
 * Likelihood of each burst instant of a grid, given how far the foremost piece flew and that the tear takes `duration`
 * frame intervals; start and speed summed over.
 */
export function flightLikelihood(
  flight: FlightOfPieces,
  instants: readonly number[],
  duration: number,
): Float64Array {
  const risen = flight.still ? UNSEEN_HEIGHTS.map((share) => share * flight.halfAperture) : [0];
  return Float64Array.from(instants, (instant) => {
    let total = 0;
    for (const [behind, weight] of BEHIND) {
      for (const [share, chance] of LOOSE) {
        const loose = Math.min(MOST_LOOSE, share * duration);
        for (const height of risen) {
          total += weight * chance * overSpeeds(flight, instant, height, behind, loose);
        }
      }
    }
    return total / risen.length;
  });
}

/** The same for one start, `risen` px above where the film was last seen going, summed over speeds. */
function overSpeeds(
  { seen, limit, whole, speed, covered, exposure, halfAperture }: FlightOfPieces,
  instant: number,
  risen: number,
  behind: number,
  loose: number,
): number {
  const lead = exposure * (0.5 - covered);
  const slowing = SLOWING * halfAperture;
  const since = instant - whole.time;
  const top = risen + Math.max(0, whole.reach + ONWARDS * speed * since);
  const growthU = ONWARDS_U * speed * since;
  const startU = Math.sqrt(EDGE_U * EDGE_U + growthU * growthU);
  const start = top * (1 - behind);
  const odd = (ODD / limit) ** seen.length;
  const last = (seen.findLast(({ reach }) => reach <= limit - VIEW_END) ?? seen[0]) as ReachSeen;
  const free = last.time + lead - instant - loose;
  const way = last.reach - start;
  if (free <= 0 || way <= 0 || way >= slowing) return odd;
  const wanted = (-slowing * Math.log1p(-way / slowing)) / free;
  const slowest = SLOWEST * halfAperture;
  const fastest = FASTEST * halfAperture;
  const step = SPEED_STEP * Math.sqrt((startU / way) ** 2 + WAY_U * WAY_U);
  let total = 0;
  for (let k = -SPEED_STEPS; k <= SPEED_STEPS; k++) {
    const fast = wanted * Math.exp(k * step);
    if (fast < slowest || fast > fastest) continue;
    let product = 1;
    for (const { time, reach } of seen) {
      const flying = Math.max(0, time + lead - instant - loose);
      const flown = slowing * -Math.expm1((-fast * flying) / slowing);
      const standing =
        whole.reach + ONWARDS * speed * (Math.min(instant, time + lead) - whole.time);
      const expected = Math.max(start + flown, Math.min(top, standing));
      if (expected > limit - VIEW_END) {
        // Out of view, or partly: what is seen is its rest or a slower piece.
        product *= 1 / (reach > limit - 2 * VIEW_END ? halfAperture : limit);
        continue;
      }
      const variance = startU * startU + (WAY_U * flown) ** 2;
      const miss = reach - expected;
      const density = Math.exp((-0.5 * miss * miss) / variance) / Math.sqrt(variance);
      product *= (1 - ODD) * density + ODD / limit;
    }
    total += product;
  }
  return odd + (total * step) / Math.log(FASTEST / SLOWEST);
}
