import { COVER, DENSITY, EDGE_REACH, TABLE_STEP } from './discTables';

/**
 * Places on the ball's disc along a pixel's path, and the brightness there. Each is a part of the disc: its
 * mean surface normal (u, v, w), u and v in the image and w towards the camera, and the standard deviation
 * `spread` of w over it. One set serves all pixels, so that nothing is allocated for each.
 */
export interface Places {
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly w: Float64Array;
  readonly spread: Float64Array;
  /** What each counts in the mean over the path. */
  readonly share: Float64Array;
  /** Told by the shading: mean brightness, its slopes by the normal, and how much of the place the lamp lights. */
  readonly bright: Float64Array;
  readonly alongU: Float64Array;
  readonly alongV: Float64Array;
  readonly alongW: Float64Array;
  readonly lit: Float64Array;
  /** What the darkening of the limb leaves of it, and the change of it with the limb's parameter. */
  readonly left: Float64Array;
  readonly byLimb: Float64Array;
}

export function placesFor(most: number): Places {
  const column = () => new Float64Array(most);
  return {
    u: column(),
    v: column(),
    w: column(),
    spread: column(),
    share: column(),
    bright: column(),
    alongU: column(),
    alongV: column(),
    alongW: column(),
    lit: column(),
    left: column(),
    byLimb: column(),
  };
}

/** Brightness over the ball's disc, as a function of the surface normal. */
export interface Shading {
  /** Number of its parameters. */
  readonly terms: number;
  /**
   * Tells the brightness of the first `n` places for the parameters `p`, and sets `by` from `offset` on to
   * its derivatives by the parameters, the places' shares times theirs summed up.
   */
  over(places: Places, n: number, p: Float64Array, by: Float64Array, offset: number): void;
  /** From now on the edge of the shadow stays where these parameters have it; null: it follows them. */
  hold(p: Float64Array | null): void;
  /** Spreads the edge of the shadow by this share of the lamp, so that a fit finds its way to it. */
  soften(share: number): void;
  /** The same brightness as parameters of the free shading. */
  plain(p: Float64Array): Float64Array;
}

/** Parameters of the free shading: nine polynomial terms, the vector of a lamp, the darkening of the limb. */
export const SHADE_TERMS = 13;
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
    over(places, n, p, by, offset) {
      brighten(places, n, p, held ?? p, softness);
      addTerms(places, n, by, offset);
    },
    plain: (p) => p.slice(),
  };
}

/** Brightness of the places under polynomial and lamp; what the lamp lights is told by `lamp`. */
function brighten(
  { u: us, v: vs, w: ws, spread, bright, alongU, alongV, alongW, lit: lits, left, byLimb }: Places,
  n: number,
  p: Float64Array,
  lamp: Float64Array,
  softness: number,
): void {
  const p0 = p[0] as number;
  const p1 = p[1] as number;
  const p2 = p[2] as number;
  const p3 = p[3] as number;
  const uu = p[4] as number;
  const uv = p[5] as number;
  const vv = p[6] as number;
  const uw = p[7] as number;
  const vw = p[8] as number;
  const p9 = p[9] as number;
  const p10 = p[10] as number;
  const p11 = p[11] as number;
  const limb = p[LIMB] as number;
  const l9 = lamp[9] as number;
  const l10 = lamp[10] as number;
  const l11 = lamp[11] as number;
  const byDepth = Math.abs(l11);
  const soft = softness > 0 ? softness * Math.hypot(l9, l10, l11) : 0;
  // Another module's names are looked up at every use where the loader keeps modules apart.
  const [covers, densities, reach, step] = [COVER, DENSITY, EDGE_REACH, TABLE_STEP];
  for (let k = 0; k < n; k++) {
    const u = us[k] as number;
    const v = vs[k] as number;
    const w = ws[k] as number;
    const height = l9 * u + l10 * v + l11 * w;
    // Part of the normals may lie in the light: the mean of what is positive of a normal distribution.
    const s = (spread[k] as number) * byDepth + soft;
    let lit = height > 0 ? 1 : 0;
    let rest = 0;
    if (Math.abs(height) < reach * s) {
      const at = Math.floor((height / s + reach) / step);
      lit = covers[at] as number;
      rest = s * (densities[at] as number);
    }
    // The polynomial's terms in v and w beside those that u multiplies.
    const slopeU = p1 + uv * v + uw * w + lit * p9;
    const slopeV = p2 + vw * w + lit * p10;
    const slopeW = p3 + lit * p11;
    // All of it falls off towards the limb alike, as the facets of a rough surface make it.
    const share = 1 + limb * (w - 1);
    const light = p0 + (slopeU + uu * u) * u + (slopeV + vv * v) * v + slopeW * w + rest;
    alongU[k] = share * (slopeU + 2 * uu * u);
    alongV[k] = share * (slopeV + uv * u + 2 * vv * v);
    alongW[k] = share * (slopeW + uw * u + vw * v) + limb * light;
    bright[k] = share * light;
    lits[k] = lit;
    left[k] = share;
    byLimb[k] = light * (w - 1);
  }
}

/** Derivatives of the places' brightness by the free shading's parameters, summed up. */
function addTerms(
  { u: us, v: vs, w: ws, share, lit, left, byLimb }: Places,
  n: number,
  by: Float64Array,
  offset: number,
): void {
  let one = 0;
  let byU = 0;
  let byV = 0;
  let byW = 0;
  let uu = 0;
  let uv = 0;
  let vv = 0;
  let uw = 0;
  let vw = 0;
  let litU = 0;
  let litV = 0;
  let litW = 0;
  let limb = 0;
  for (let k = 0; k < n; k++) {
    limb += (share[k] as number) * (byLimb[k] as number);
    const m = (share[k] as number) * (left[k] as number);
    const l = lit[k] as number;
    const mu = m * (us[k] as number);
    const mv = m * (vs[k] as number);
    const v = vs[k] as number;
    const w = ws[k] as number;
    one += m;
    byU += mu;
    byV += mv;
    byW += m * w;
    uu += mu * (us[k] as number);
    uv += mu * v;
    vv += mv * v;
    uw += mu * w;
    vw += mv * w;
    litU += l * mu;
    litV += l * mv;
    litW += l * m * w;
  }
  by[offset] = one;
  by[offset + 1] = byU;
  by[offset + 2] = byV;
  by[offset + 3] = byW;
  by[offset + 4] = uu;
  by[offset + 5] = uv;
  by[offset + 6] = vv;
  by[offset + 7] = uw;
  by[offset + 8] = vw;
  by[offset + 9] = litU;
  by[offset + 10] = litV;
  by[offset + 11] = litW;
  by[offset + LIMB] = limb;
}

/** The free shading's parameters for all brightness times a factor. */
export const scaledShade = (shade: Float64Array, factor: number): Float64Array =>
  shade.map((value, j) => (j === LIMB ? value : factor * value));

/** A pattern known from other frames, in the free shading's terms: its level and a tilt in each direction are left free. */
export function learntShading(pattern: ArrayLike<number>): Shading {
  const known = Float64Array.from(pattern);
  return {
    terms: 4,
    hold() {},
    soften() {},
    over(places, n, p, by, offset) {
      brighten(places, n, known, known, 0);
      const { u, v, w, share, bright, alongU, alongV, alongW } = places;
      const level = p[0] as number;
      const tiltU = p[1] as number;
      const tiltV = p[2] as number;
      const tiltW = p[3] as number;
      let byLevel = 0;
      let byU = 0;
      let byV = 0;
      let byW = 0;
      for (let k = 0; k < n; k++) {
        const m = share[k] as number;
        const pattern = bright[k] as number;
        byLevel += m * pattern;
        byU += m * (u[k] as number);
        byV += m * (v[k] as number);
        byW += m * (w[k] as number);
        alongU[k] = level * (alongU[k] as number) + tiltU;
        alongV[k] = level * (alongV[k] as number) + tiltV;
        alongW[k] = level * (alongW[k] as number) + tiltW;
        bright[k] =
          level * pattern +
          tiltU * (u[k] as number) +
          tiltV * (v[k] as number) +
          tiltW * (w[k] as number);
      }
      by[offset] = byLevel;
      by[offset + 1] = byU;
      by[offset + 2] = byV;
      by[offset + 3] = byW;
    },
    plain(p) {
      const sum = scaledShade(known, p[0] as number);
      for (let j = 1; j < 4; j++) sum[j] = (sum[j] as number) + (p[j] as number);
      return sum;
    },
  };
}
