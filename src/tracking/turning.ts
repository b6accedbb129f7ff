import type { Patterns } from './faces';

/** A pattern that turns and one that stands still, as the frames have them at one rate; layout of `Patterns`. */
export interface Split {
  readonly turningRe: Float64Array;
  readonly turningIm: Float64Array;
  readonly stillRe: Float64Array;
  readonly stillIm: Float64Array;
}

/** How strong the two may be, as shares of the ball's contrast; infinite: anything. */
export interface Strengths {
  readonly turning: number;
  readonly still: number;
}

/**
 * Least-squares split of the frames into a pattern that turns at `rate` and one that stands still, frame `without`
 * left out (-1: none). Returns how much of chi-square the turning one explains beyond the still one; the patterns
 * go into `out` where given. Both are held near nothing by their strengths, lest a slow change of the light pass
 * for a slight turn of a huge mark.
 */
export function splitAt(
  patterns: Patterns,
  rate: number,
  strengths: Strengths,
  without = -1,
  out: Split | null = null,
): number {
  const { n, rings, orders, times, re, im, weights, unit, contrast } = patterns;
  const size = rings * orders;
  const cos = new Float64Array(n);
  const sin = new Float64Array(n);
  let total = 0;
  for (let i = 0; i < n; i++) if (i !== without) total += weights[i] as number;
  let gain = 0;
  for (let j = 1; j <= orders; j++) {
    let eRe = 0;
    let eIm = 0;
    for (let i = 0; i < n; i++) {
      const w = i === without ? 0 : (weights[i] as number);
      const turn = j * rate * (times[i] as number);
      cos[i] = w * Math.cos(turn);
      sin[i] = w * Math.sin(turn);
      eRe += cos[i] as number;
      eIm += sin[i] as number;
    }
    for (let r = 0; r < rings; r++) {
      const q = r * orders + j - 1;
      let aRe = 0;
      let aIm = 0;
      let bRe = 0;
      let bIm = 0;
      for (let i = 0; i < n; i++) {
        if (i === without) continue;
        const zRe = re[i * size + q] as number;
        const zIm = im[i * size + q] as number;
        const c = cos[i] as number;
        const s = sin[i] as number;
        const w = weights[i] as number;
        aRe += w * zRe;
        aIm += w * zIm;
        bRe += c * zRe - s * zIm;
        bIm += c * zIm + s * zRe;
      }
      const size2 = (contrast * (unit[r] as number)) ** 2;
      const still = total + 1 / (strengths.still ** 2 * size2);
      const turning = total + 1 / (strengths.turning ** 2 * size2);
      // b - e a / still: what the still pattern cannot have of the turning one.
      const ownRe = bRe - (eRe * aRe - eIm * aIm) / still;
      const ownIm = bIm - (eRe * aIm + eIm * aRe) / still;
      const left = turning - (eRe * eRe + eIm * eIm) / still;
      if (!(left > 1e-9 * total)) {
        if (out !== null) fill(out, q, 0, 0, aRe / still, aIm / still);
        continue;
      }
      gain += (ownRe * ownRe + ownIm * ownIm) / left;
      if (out !== null) {
        const mRe = ownRe / left;
        const mIm = ownIm / left;
        const cRe = (aRe - (eRe * mRe + eIm * mIm)) / still;
        const cIm = (aIm - (eRe * mIm - eIm * mRe)) / still;
        fill(out, q, mRe, mIm, cRe, cIm);
      }
    }
  }
  return gain;
}

/** Chi-square of the frames after a still pattern and a turning one that explains `gain`. */
export function leftOver(
  { n, rings, orders, re, im, weights, unit, contrast }: Patterns,
  strengths: Strengths,
  gain: number,
): number {
  const size = rings * orders;
  let total = 0;
  for (let i = 0; i < n; i++) total += weights[i] as number;
  let left = -gain;
  for (let q = 0; q < size; q++) {
    let aRe = 0;
    let aIm = 0;
    for (let i = 0; i < n; i++) {
      const w = weights[i] as number;
      const zRe = re[i * size + q] as number;
      const zIm = im[i * size + q] as number;
      aRe += w * zRe;
      aIm += w * zIm;
      left += w * (zRe * zRe + zIm * zIm);
    }
    const size2 = (contrast * (unit[Math.floor(q / orders)] as number)) ** 2;
    left -= (aRe * aRe + aIm * aIm) / (total + 1 / (strengths.still ** 2 * size2));
  }
  return left;
}

function fill(out: Split, q: number, mRe: number, mIm: number, cRe: number, cIm: number): void {
  out.turningRe[q] = mRe;
  out.turningIm[q] = mIm;
  out.stillRe[q] = cRe;
  out.stillIm[q] = cIm;
}

export function emptySplit({ rings, orders }: Patterns): Split {
  const values = () => new Float64Array(rings * orders);
  return {
    turningRe: values(),
    turningIm: values(),
    stillRe: values(),
    stillIm: values(),
  };
}

/** How a frame's pattern lies to the turning one of all other frames. */
export interface FrameTurn {
  /** Angle by which it is ahead, and its standard uncertainty from noise. */
  readonly ahead: number;
  readonly u: number;
  /** Its strength over that of the others, and the standard uncertainty. */
  readonly strength: number;
  readonly strengthU: number;
}

const ANGLES = 128;

/** Angle of one frame's pattern against that of the other frames at this rate. */
export function frameTurn(
  patterns: Patterns,
  rate: number,
  strengths: Strengths,
  frame: number,
  split: Split,
): FrameTurn {
  splitAt(patterns, rate, strengths, frame, split);
  const { rings, orders, times, re, im } = patterns;
  const size = rings * orders;
  // f(d) = sum over orders of p cos(j d) - q sin(j d): correlation with the pattern turned on by d.
  const p = new Float64Array(orders + 1);
  const q = new Float64Array(orders + 1);
  let power = 0;
  let stiffness = 0;
  for (let j = 1; j <= orders; j++) {
    const turn = j * rate * (times[frame] as number);
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    for (let r = 0; r < rings; r++) {
      const at = r * orders + j - 1;
      const mRe = split.turningRe[at] as number;
      const mIm = split.turningIm[at] as number;
      const dRe = (re[frame * size + at] as number) - (split.stillRe[at] as number);
      const dIm = (im[frame * size + at] as number) - (split.stillIm[at] as number);
      const xRe = mRe * dRe + mIm * dIm;
      const xIm = mRe * dIm - mIm * dRe;
      p[j] = (p[j] as number) + xRe * c - xIm * s;
      q[j] = (q[j] as number) + xRe * s + xIm * c;
      power += mRe * mRe + mIm * mIm;
      stiffness += j * j * (mRe * mRe + mIm * mIm);
    }
  }
  const value = (d: number) => {
    let sum = 0;
    for (let j = 1; j <= orders; j++) {
      sum += (p[j] as number) * Math.cos(j * d) - (q[j] as number) * Math.sin(j * d);
    }
    return sum;
  };
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < ANGLES; k++) {
    const d = ((2 * k) / ANGLES - 1) * Math.PI;
    const at = value(d);
    if (at > most) {
      most = at;
      best = d;
    }
  }
  for (let round = 0; round < 4; round++) {
    let slope = 0;
    let bend = 0;
    for (let j = 1; j <= orders; j++) {
      const c = Math.cos(j * best);
      const s = Math.sin(j * best);
      slope -= j * ((p[j] as number) * s + (q[j] as number) * c);
      bend -= j * j * ((p[j] as number) * c - (q[j] as number) * s);
    }
    if (!(bend < 0)) break;
    best -= Math.max(-0.05, Math.min(0.05, slope / bend));
  }
  return {
    ahead: best,
    u: 1 / Math.sqrt(stiffness),
    strength: value(best) / power,
    strengthU: 1 / Math.sqrt(power),
  };
}
