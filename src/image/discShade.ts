import { definiteInverse } from '../core/linalg';
import { median } from '../core/statistics';
import { COVER, DENSITY, EDGE_REACH, TABLE_STEP } from './discTables';

/**
 * Brightness over the ball's disc, as a function of the surface normal (u, v, w): u and v in the image,
 * w towards the camera.
 */
export interface Shading {
  /** Number of its parameters. */
  readonly terms: number;
  /**
   * Mean brightness over normals with the mean (u, v, w) and the standard deviation `spread` of w; its
   * derivatives by the parameters and by the normal go into `by` and `slope`.
   */
  at(
    u: number,
    v: number,
    w: number,
    spread: number,
    p: Float64Array,
    by: Float64Array,
    slope: Float64Array,
  ): number;
  /** From now on the edge of the shadow stays where these parameters have it; null: it follows them. */
  hold(p: Float64Array | null): void;
  /** Spreads the edge of the shadow by this share of the lamp, so that a fit finds its way to it. */
  soften(share: number): void;
  /** The same brightness as parameters of the free shading. */
  plain(p: Float64Array): Float64Array;
}

/** Parameters of the free shading: nine polynomial terms, the vector of a lamp, the darkening of the limb. */
const SHADE_TERMS = 13;
/** Where the lamp's vector begins. */
export const LAMP = 9;
/** Share by which all of it is darker at the limb than in the middle, with the other sign. */
export const LIMB = 12;

/**
 * Nothing known: all polynomials in the normal up to order two, which hold a matt sphere under any
 * distant lighting to a few per cent (Basri and Jacobs, IEEE Trans. Pattern Anal. Mach. Intell. 25 (2003)
 * 218), and one lamp whose light stops at the edge of the shadow (Lambert's law), which they cannot hold
 * and which would else draw the outline towards the light.
 */
export function freeShading(): Shading {
  let held: Float64Array | null = null;
  let softness = 0;
  return {
    terms: SHADE_TERMS,
    hold(p) {
      held = p === null ? null : p.slice();
    },
    soften(share) {
      softness = share;
    },
    at(u, v, w, spread, p, by, slope) {
      const l = held ?? p;
      const lamp = (l[9] as number) * u + (l[10] as number) * v + (l[11] as number) * w;
      // Part of the normals may lie in the light: the mean of what is positive of a normal distribution.
      let s = spread * Math.abs(l[11] as number);
      if (softness > 0) {
        s += softness * Math.hypot(l[9] as number, l[10] as number, l[11] as number);
      }
      let lit = lamp > 0 ? 1 : 0;
      let rest = 0;
      if (Math.abs(lamp) < EDGE_REACH * s) {
        const at = Math.floor((lamp / s + EDGE_REACH) / TABLE_STEP);
        lit = COVER[at] as number;
        rest = s * (DENSITY[at] as number);
      }
      by[0] = 1;
      by[1] = u;
      by[2] = v;
      by[3] = w;
      by[4] = u * u;
      by[5] = u * v;
      by[6] = v * v;
      by[7] = u * w;
      by[8] = v * w;
      by[9] = lit * u;
      by[10] = lit * v;
      by[11] = lit * w;
      const uu = p[4] as number;
      const uv = p[5] as number;
      const vv = p[6] as number;
      const uw = p[7] as number;
      const vw = p[8] as number;
      const bright =
        (p[0] as number) +
        (p[1] as number) * u +
        (p[2] as number) * v +
        (p[3] as number) * w +
        uu * u * u +
        uv * u * v +
        vv * v * v +
        uw * u * w +
        vw * v * w +
        lit * ((p[9] as number) * u + (p[10] as number) * v + (p[11] as number) * w) +
        rest;
      // All of it falls off towards the limb alike, as the facets of a rough surface make it.
      const limb = p[LIMB] as number;
      const share = 1 + limb * (w - 1);
      for (let j = 0; j < LIMB; j++) by[j] = share * (by[j] as number);
      by[LIMB] = bright * (w - 1);
      slope[0] = share * ((p[1] as number) + 2 * uu * u + uv * v + uw * w + lit * (p[9] as number));
      slope[1] =
        share * ((p[2] as number) + uv * u + 2 * vv * v + vw * w + lit * (p[10] as number));
      slope[2] =
        share * ((p[3] as number) + uw * u + vw * v + lit * (p[11] as number)) + limb * bright;
      return share * bright;
    },
    plain: (p) => p.slice(),
  };
}

/** A pattern known from other frames, in the free shading's terms: its level and a tilt in each direction are left free. */
export function learntShading(pattern: ArrayLike<number>): Shading {
  const known = Float64Array.from(pattern);
  const unused = new Float64Array(SHADE_TERMS);
  const free = freeShading();
  return {
    terms: 4,
    hold() {},
    soften() {},
    at(u, v, w, spread, p, by, slope) {
      const level = p[0] as number;
      const brightness = free.at(u, v, w, spread, known, unused, slope);
      by[0] = brightness;
      by[1] = u;
      by[2] = v;
      by[3] = w;
      slope[0] = level * (slope[0] as number) + (p[1] as number);
      slope[1] = level * (slope[1] as number) + (p[2] as number);
      slope[2] = level * (slope[2] as number) + (p[3] as number);
      return (
        level * brightness + (p[1] as number) * u + (p[2] as number) * v + (p[3] as number) * w
      );
    },
    plain(p) {
      const sum = scaledShade(known, p[0] as number);
      for (let j = 1; j < 4; j++) sum[j] = (sum[j] as number) + (p[j] as number);
      return sum;
    },
  };
}

/** The free shading's parameters for all brightness times a factor. */
export const scaledShade = (shade: Float64Array, factor: number): Float64Array =>
  shade.map((value, j) => (j === LIMB ? value : factor * value));

const PLAIN = freeShading();

/** Normals spread evenly over the disc as the camera sees it. */
const DISC_NORMALS = sunflower(240);

/** Brightness of the free shading at each of `DISC_NORMALS`. */
function brightnessOver(shade: ArrayLike<number>): Float64Array {
  const p = Float64Array.from(shade);
  const by = new Float64Array(SHADE_TERMS);
  const slope = new Float64Array(3);
  return Float64Array.from(DISC_NORMALS, ([u, v, w]) => PLAIN.at(u, v, w, 0, p, by, slope));
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
  const p = new Float64Array(count);
  // From the mean on.
  for (const shade of shades) {
    for (let j = 0; j < count; j++) p[j] = (p[j] as number) + (shade[j] ?? 0) / shades.length;
  }
  const by = new Float64Array(count);
  const slope = new Float64Array(3);
  for (let round = 0; round < 12; round++) {
    const normal = new Float64Array(count * count);
    const rhs = new Float64Array(count);
    DISC_NORMALS.forEach(([u, v, w], k) => {
      const off = (target[k] as number) - PLAIN.at(u, v, w, 0, p, by, slope);
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
    for (let r = 0; r < count; r++) {
      let step = 0;
      for (let c = 0; c < count; c++) {
        step += (inverse[r * count + c] as number) * (rhs[c] as number);
      }
      p[r] = (p[r] as number) + step;
    }
  }
  return Array.from(p);
}

/** Normals spread evenly over the disc as the camera sees it: equal areas, each turned by the golden angle from the one before. */
function sunflower(count: number): [u: number, v: number, w: number][] {
  return Array.from({ length: count }, (_, k) => {
    const r2 = (k + 0.5) / count;
    const angle = k * Math.PI * (3 - Math.sqrt(5));
    return [Math.sqrt(r2) * Math.cos(angle), Math.sqrt(r2) * Math.sin(angle), Math.sqrt(1 - r2)];
  });
}
