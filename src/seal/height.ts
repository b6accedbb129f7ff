import { median, robustDeviation } from '../core/statistics';
import type { Pixels } from '../core/units';
import type { HeightSeen } from './growth';
import { templateOf } from './opening';
import type { SealObservation, SealPicture } from './types';

/** The film's lowest heights are read off the change over so many px from where it comes into view. */
const NEAR: Pixels = 4;
/** Of the rows across, this share in the middle is read, where the film stands out farthest. */
const MIDDLE = 0.25;
/** Where the film stands out by so much its edge tells its height better, px. */
const CLEAR: Pixels = 1.2;
/** What half-covered pixels and a film seen edge-on leave open, px. */
const EDGE_U: Pixels = 0.15;
/** The film is in view where it stands out by so many standard deviations, and no less than this, px. */
const SEEN = 4;
const LEAST_SEEN: Pixels = 0.15;

/** One height a frame, px; not `seen`: no higher than that. */
export type Heights = readonly Omit<HeightSeen, 'time'>[];

/**
 * How far the film stands out in each frame up to the last whole one, px. A film less than a few pixels high has no
 * edge of its own yet: what it changes of the grey values, over what it changes where it covers them whole, tells its
 * height above where it comes into view. Two readings, since that place is not known for sure: where the film is first
 * seen when it stands out most, or as far out as its first edge stands beyond what it covers, behind the ring's rim.
 * Empty: too little of the film stands out.
 */
export function heightsOf(whole: readonly SealObservation[]): readonly Heights[] {
  const last = whole.at(-1)?.picture;
  const strength = last === undefined ? null : (templateOf(last)?.strength ?? null);
  if (last === undefined || strength === null) return [];
  const plain = hiddenBy(last, strength);
  const near = whole.map(({ picture }) => coveredFrom(plain, picture, strength));
  const resting = near.slice(0, Math.max(1, Math.min(8, Math.floor(whole.length / 3))));
  const zero = median(resting);
  const scatter = Math.max(robustDeviation(resting, zero), noiseOf(last, strength));
  const least = Math.max(LEAST_SEEN, SEEN * scatter);
  const low = near.map((covered) => covered - zero);
  const edged = whole.findIndex(({ front }, i) => (low[i] as number) > least && front > plain);
  const rim = edged < 0 ? plain : (whole[edged] as SealObservation).front - (low[edged] as number);
  return [plain, Math.max(plain, rim)].map((hidden) =>
    whole.map(({ front, frontU }, i) => {
      const covered = low[i] as number;
      if (covered < least) {
        const u = Math.max(scatter, EDGE_U / 3);
        return { height: hidden + Math.max(0, covered), u, seen: false };
      }
      if (covered > CLEAR && front > hidden + CLEAR) {
        return { height: front, u: Math.hypot(frontU, EDGE_U), seen: true };
      }
      return { height: hidden + covered, u: Math.hypot(scatter, EDGE_U), seen: true };
    }),
  );
}

/** From which height on the film is in view: the first column where it shows half its change, linear between. */
function hiddenBy(picture: SealPicture, strength: number): Pixels {
  const shares = Array.from({ length: picture.columns }, (_, c) =>
    columnShare(picture, strength, c),
  );
  const full = Math.max(...shares.slice(0, Math.ceil((4 * NEAR) / picture.cell)));
  const column = shares.findIndex((share) => share >= full / 2);
  if (column <= 0) return 0;
  const [before, here] = [shares[column - 1] as number, shares[column] as number];
  const part = (here - full / 2) / (here - before);
  // The first pixel's middle lies on the plane.
  return Math.max(0, (column + 0.5 - part) * picture.cell - 0.5);
}

/** Mean share of the film in the middle of a column. */
function columnShare(
  { columns, rows, change }: SealPicture,
  strength: number,
  column: number,
): number {
  const [from, to] = middleOf(rows);
  let sum = 0;
  for (let row = from; row < to; row++) sum += change[row * columns + column] as number;
  return sum / strength / (to - from);
}

/** Mean height of the film's middle over the columns from where it comes into view. */
function coveredFrom(hidden: Pixels, picture: SealPicture, strength: number): Pixels {
  const first = Math.floor(hidden / picture.cell);
  const deep = Math.max(1, Math.round(NEAR / picture.cell));
  let sum = 0;
  for (let c = first; c < Math.min(picture.columns, first + deep); c++) {
    sum += columnShare(picture, strength, c);
  }
  return sum * picture.cell;
}

function noiseOf({ rows, cell, noise }: SealPicture, strength: number): Pixels {
  const [from, to] = middleOf(rows);
  return (noise / Math.abs(strength)) * Math.sqrt((NEAR * cell) / (to - from));
}

function middleOf(rows: number): readonly [from: number, to: number] {
  const half = Math.max(1, Math.round((MIDDLE * rows) / 2));
  const centre = Math.floor(rows / 2);
  return [Math.max(0, centre - half), Math.min(rows, centre + half + 1)];
}
