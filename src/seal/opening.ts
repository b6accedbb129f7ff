import type { SealObservation, SealPicture } from './types';

/** A cell belongs to the film where it shows this share of the film's change at least, its neighbours counted in. */
const CORE = 0.7;
/** So much of it is enough where the film stands on the seal plane, within so many cells. */
const FOOT_CORE = 0.3;
const FOOT = 2;
/** So many of its rows stand on the plane. */
const ROOTED = 0.5;
/** Fewer cells than this tell nothing. */
const FEWEST_CELLS = 8;
/** Noise standard deviations a cell must stand out by, after smoothing. */
const STANDS_OUT = 5;
/** Noise that binomial smoothing over 3 x 3 cells leaves of the original's. */
export const SMOOTHED_NOISE = 0.375;
/** The film's own change is the one this share of its cells exceed. */
const STRENGTH_RANK = 0.3;

/** The film as one frame shows it whole. */
export interface FilmTemplate {
  /** Cells that are film and nothing else, and the change expected there. */
  readonly cells: Int32Array;
  readonly weights: Float32Array;
  /** Sum of weight times own change. */
  readonly power: number;
  /** Typical change of the film, grey values. */
  readonly strength: number;
}

/** Share of the film lost since the template, and the standard uncertainty that noise leaves. */
export interface Loss {
  readonly share: number;
  readonly u: number;
}

/** What a frame in which the film is whole says of where it is; null: too little of it stands out. */
export function templateOf(picture: SealPicture): FilmTemplate | null {
  const smooth = smoothed(picture);
  const least = Math.max(picture.least, STANDS_OUT * SMOOTHED_NOISE * picture.noise);
  const seen = smooth.filter((c) => Math.abs(c) > least).sort((a, b) => Math.abs(b) - Math.abs(a));
  if (seen.length < FEWEST_CELLS) return null;
  const strength = seen[Math.floor(STRENGTH_RANK * seen.length)] as number;
  const cells: number[] = [];
  const { columns } = picture;
  smooth.forEach((c, at) => {
    const share = c / strength;
    // The film's foot keeps its place: what is partly film there tells too.
    const foot = at % columns < FOOT && (smooth[at + 1] as number) / strength > share;
    if (Math.abs(c) > least && share > (foot ? FOOT_CORE : CORE)) cells.push(at);
  });
  if (cells.length < FEWEST_CELLS) return null;
  if (!isRooted(cells, picture)) return null;
  const weights = Float32Array.from(cells, (at) => smooth[at] as number);
  const power = weights.reduce(
    (sum, w, i) => sum + w * (picture.change[cells[i] as number] as number),
    0,
  );
  return { cells: Int32Array.from(cells), weights, power, strength };
}

/** Whether the cells stand on the seal plane: a film that is whole does, pieces of one fly free. */
function isRooted(cells: readonly number[], { columns, rows }: SealPicture): boolean {
  const nearest = new Int32Array(rows).fill(columns);
  for (const at of cells) {
    const row = Math.floor(at / columns);
    nearest[row] = Math.min(nearest[row] as number, at % columns);
  }
  const filled = nearest.filter((column) => column < columns);
  return filled.filter((column) => column <= FOOT).length >= ROOTED * filled.length;
}

/**
 * The share of the template's film that a later frame no longer shows where it was: a film that goes on bulging
 * loses nothing. Linear in the grey values, so that a frame gives the mean over its exposure.
 */
export function lossSince(template: FilmTemplate, picture: SealPicture): Loss {
  const { cells, weights, power } = template;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < cells.length; i++) {
    const w = weights[i] as number;
    sum += w * (picture.change[cells[i] as number] as number);
    squares += w * w;
  }
  // Both frames bring noise.
  const u = (Math.SQRT2 * picture.noise * Math.sqrt(squares)) / Math.abs(power);
  return { share: 1 - sum / power, u };
}

/** A loss this large, noise apart, is an opening; what whole films lost before counts twice, up to a limit. */
const OPEN_SHARE = 0.05;
const EARLIER_FACTOR = 2;
const MOST_EARLIER = 0.03;
const NOISE_FACTOR = 3;
/** A slow tear shows over so many frames: too little film goes from one to the next. */
const FRAMES_BACK = 3;

/** Indices of observations: the first that may show film lost, and the first that surely does. */
export interface Opening {
  readonly open: number;
  readonly surely: number;
}

/** Where film is lost since one of the observations just before; null: nowhere. */
export function firstOpening(observations: readonly SealObservation[]): Opening | null {
  const templates: (FilmTemplate | null)[] = [];
  let earlier = 0;
  for (let i = 1; i < observations.length; i++) {
    templates.push(templateOf((observations[i - 1] as SealObservation).picture));
    const { picture } = observations[i] as SealObservation;
    const allowed = Math.max(OPEN_SHARE, EARLIER_FACTOR * Math.min(earlier, MOST_EARLIER));
    for (let back = 1; back <= Math.min(FRAMES_BACK, i); back++) {
      const template = templates[i - back] ?? null;
      if (template === null) continue;
      const { share, u } = lossSince(template, picture);
      if (share > allowed + NOISE_FACTOR * u) return { open: i - back + 1, surely: i };
      if (back === 1) earlier = Math.max(earlier, share);
    }
  }
  return null;
}

/** Each cell with its eight neighbours, binomial weights; the edge repeats. */
function smoothed({ columns, rows, change }: SealPicture): Float32Array {
  const lines = new Float32Array(change.length);
  const out = new Float32Array(change.length);
  for (let row = 0; row < rows; row++) {
    const start = row * columns;
    for (let c = 0; c < columns; c++) {
      const left = change[start + Math.max(0, c - 1)] as number;
      const right = change[start + Math.min(columns - 1, c + 1)] as number;
      lines[start + c] = (left + right + 2 * (change[start + c] as number)) / 4;
    }
  }
  for (let row = 0; row < rows; row++) {
    const above = Math.max(0, row - 1) * columns;
    const below = Math.min(rows - 1, row + 1) * columns;
    for (let c = 0; c < columns; c++) {
      const own = lines[row * columns + c] as number;
      out[row * columns + c] =
        ((lines[above + c] as number) + (lines[below + c] as number) + 2 * own) / 4;
    }
  }
  return out;
}

/** So many cells must lie beyond the leading edge: fewer are a speck. */
const SPECK = 3;

/** How far out along the axis something stands out by `level` grey values, px; 0: nothing does. */
export function leadingEdge(picture: SealPicture, level: number): number {
  const { columns, rows, cell } = picture;
  const smooth = smoothed(picture);
  let beyond = 0;
  for (let column = columns - 1; column >= 0; column--) {
    let here = 0;
    for (let row = 0; row < rows; row++) {
      if (Math.abs(smooth[row * columns + column] as number) > level) here++;
    }
    if (beyond + here >= SPECK) {
      const part = (SPECK - beyond) / here;
      return (column + 1 - part) * cell;
    }
    beyond += here;
  }
  return 0;
}
