import { definiteInverse } from '../core/linalg';
import { median } from '../core/statistics';
import { freeShading, placesFor, SHADE_TERMS } from './discShade';

/** Normals spread evenly over the disc as the camera sees it. */
const DISC_NORMALS = sunflower(240);

/** One place, for looking at one normal at a time. */
const PLACE = placesFor(1);
const PLAIN = freeShading();
/** Normals that a tilt of 1 is held by where the level could do the same. */
const TILT_HOLD = 1e-3;

/** Brightness of the free shading at a normal; its derivatives by the parameters go into `by`. */
function brightnessAt(
  [u, v, w]: (typeof DISC_NORMALS)[number],
  p: Float64Array,
  by: Float64Array,
): number {
  PLACE.u[0] = u;
  PLACE.v[0] = v;
  PLACE.w[0] = w;
  PLACE.share[0] = 1;
  PLAIN.over(PLACE, 1, p, by, 0);
  return PLACE.bright[0] as number;
}

/** Brightness of the free shading at each of `DISC_NORMALS`. */
function brightnessOver(shade: ArrayLike<number>): Float64Array {
  const p = Float64Array.from(shade);
  const by = new Float64Array(SHADE_TERMS);
  return Float64Array.from(DISC_NORMALS, (normal) => brightnessAt(normal, p, by));
}

/** Mean brightness of a shaded disc, in the free shading's terms. */
export function meanBrightness(shade: ArrayLike<number>): number {
  const over = brightnessOver(shade);
  return over.reduce((sum, value) => sum + value, 0) / over.length;
}

/**
 * One pattern from those of several frames: place by place over the disc the median, and the parameters
 * that come nearest to it. Medians of the parameters themselves would not do: lamp and polynomial can
 * stand in for each other, differently in each frame.
 */
export function learnPattern(shades: readonly (readonly number[])[]): number[] {
  const over = shades.map(brightnessOver);
  const target = DISC_NORMALS.map((_, k) => median(over.map((values) => values[k] as number)));
  const count = SHADE_TERMS;
  const by = new Float64Array(count);
  const misfitOf = (p: Float64Array) =>
    DISC_NORMALS.reduce(
      (sum, place, k) => sum + ((target[k] as number) - brightnessAt(place, p, by)) ** 2,
      0,
    );
  // From the frame nearest to it on: a mean of lamps that differ is the lamp of none of them.
  let p = new Float64Array(count);
  let misfit = Number.POSITIVE_INFINITY;
  for (const shade of shades) {
    const own = Float64Array.from(shade);
    const off = misfitOf(own);
    if (off < misfit) [p, misfit] = [own, off];
  }
  for (let round = 0; round < 12; round++) {
    const normal = new Float64Array(count * count);
    const rhs = new Float64Array(count);
    DISC_NORMALS.forEach((place, k) => {
      const off = (target[k] as number) - brightnessAt(place, p, by);
      for (let r = 0; r < count; r++) {
        rhs[r] = (rhs[r] as number) + off * (by[r] as number);
        for (let c = 0; c < count; c++) {
          normal[r * count + c] =
            (normal[r * count + c] as number) + (by[r] as number) * (by[c] as number);
        }
      }
    });
    // A little holding on, where two terms do the same.
    for (let j = 0; j < count; j++) {
      normal[j * count + j] = (normal[j * count + j] as number) + 1e-3;
    }
    const inverse = definiteInverse(normal, count);
    if (inverse === null) break;
    const next = p.map((value, r) =>
      rhs.reduce((sum, pull, c) => sum + (inverse[r * count + c] as number) * pull, value),
    );
    const off = misfitOf(next);
    if (off >= misfit) break;
    [p, misfit] = [next, off];
  }
  return Array.from(p);
}

/**
 * How each of several patterns is tilted against a common one, for a mean brightness of 1: what of it goes
 * with the normal's components u, v and w.
 */
export function tiltsAgainst(
  pattern: readonly number[],
  shades: readonly (readonly number[])[],
): [u: number, v: number, w: number][] {
  const common = brightnessOver(pattern);
  const columns = DISC_NORMALS.map((normal, k) => [common[k] as number, ...normal]);
  const normal = new Float64Array(16);
  for (const row of columns) {
    for (let i = 0; i < 16; i++) {
      normal[i] = (normal[i] as number) + (row[i >> 2] as number) * (row[i & 3] as number);
    }
  }
  // As in the fit a tilt is small against the level: what both can do is the level's.
  for (let j = 1; j < 4; j++) normal[5 * j] = (normal[5 * j] as number) + TILT_HOLD;
  const inverse = definiteInverse(normal, 4);
  if (inverse === null) return shades.map(() => [0, 0, 0]);
  return shades.map((shade) => {
    const over = brightnessOver(shade);
    const rhs = [0, 1, 2, 3].map((c) =>
      columns.reduce((sum, row, k) => sum + (over[k] as number) * (row[c] as number), 0),
    );
    const along = (r: number) =>
      rhs.reduce((sum, value, c) => sum + (inverse[4 * r + c] as number) * value, 0);
    return [along(1), along(2), along(3)];
  });
}

/** Normals spread evenly over the disc as the camera sees it: equal areas, each turned by the golden angle from the one before. */
function sunflower(count: number): [u: number, v: number, w: number][] {
  return Array.from({ length: count }, (_, k) => {
    const r2 = (k + 0.5) / count;
    const angle = k * Math.PI * (3 - Math.sqrt(5));
    return [Math.sqrt(r2) * Math.cos(angle), Math.sqrt(r2) * Math.sin(angle), Math.sqrt(1 - r2)];
  });
}
