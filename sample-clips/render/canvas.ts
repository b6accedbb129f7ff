/** Samples a pixel is divided into, each way. */
export const SUB = 8;

/** Radiance of the static scene at every sample, as a share of the sensor's full scale. */
export interface StaticScene {
  readonly width: number;
  readonly height: number;
  /** Everything that does not move; `height * SUB` rows of `width * SUB` samples. */
  readonly radiance: Float32Array;
  /** What stands before the flight plane: the share it lets through, and what it adds. */
  readonly through: Float32Array;
  readonly added: Float32Array;
}

/** A part of the image in pixels, half open. */
export interface Clip {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Radiance of a disc at a place on it: u, v in -1..1 across and down. */
export type DiscShade = (u: number, v: number) => number;

/** The span a disc-like outline covers on one image row: [left, right] px, or null. */
export interface Outline {
  readonly top: number;
  readonly bottom: number;
  row(y: number): readonly [number, number] | null;
}

/**
 * Paints instants of a moving scene over the static one and adds up what they change. After each
 * instant the working copy is put back, so the cost goes with the painted area only. Rows are
 * sampled `SUB` a pixel; along a row an edge covers its sample by the exact share.
 */
export class Canvas {
  /** Sum over instants of weight times (scene - static scene), at every sample. */
  readonly change: Float32Array;
  /** First and one past the last changed sample of each sample row. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly columns: number;
  readonly rows: number;
  private readonly work: Float32Array;
  private spans = new Int32Array(3 * 4096);
  private spanCount = 0;

  constructor(private readonly scene: StaticScene) {
    this.columns = scene.width * SUB;
    this.rows = scene.height * SUB;
    this.work = Float32Array.from(scene.radiance);
    this.change = new Float32Array(this.columns * this.rows);
    this.first = new Int32Array(this.rows).fill(this.columns);
    this.last = new Int32Array(this.rows).fill(0);
  }

  /** Paints a shaded disc behind whatever stands before the flight plane. */
  disc(outline: Outline, shade: DiscShade, clip: Clip): void {
    const { through, added } = this.scene;
    const middle = (outline.top + outline.bottom) / 2;
    const half = (outline.bottom - outline.top) / 2;
    const rowStart = Math.max(clip.y0 * SUB, sampleFrom(outline.top));
    const rowEnd = Math.min(clip.y1 * SUB, sampleFrom(outline.bottom));
    for (let r = rowStart; r < rowEnd; r++) {
      const y = place(r);
      const ends = outline.row(y);
      if (!ends) continue;
      const [left, right] = ends;
      const v = (y - middle) / half;
      const chord = Math.sqrt(Math.max(0, 1 - v * v));
      const uScale = (2 * chord) / Math.max(right - left, 1e-9);
      const from = Math.max(clip.x0, left + 0.5) * SUB;
      const to = Math.min(clip.x1, right + 0.5) * SUB;
      if (to <= from) continue;
      const a = Math.floor(from);
      const b = Math.ceil(to);
      const offset = r * this.columns;
      const centre = (left + right) / 2;
      for (let i = a; i < b; i++) {
        const at = offset + i;
        const value = shade((place(i) - centre) * uScale, v);
        const seen = value * (through[at] as number) + (added[at] as number);
        this.blend(at, seen, covered(i, from, to));
      }
      this.note(r, a, b);
    }
  }

  /**
   * Paints a polygon (x, y pairs, px; even-odd) of even radiance and opacity; `behind` puts it
   * behind whatever stands before the flight plane.
   */
  polygon(
    points: ArrayLike<number>,
    radiance: number,
    opacity: number,
    behind: boolean,
    clip: Clip,
  ): void {
    const n = points.length / 2;
    let top = Number.POSITIVE_INFINITY;
    let bottom = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < n; k++) {
      top = Math.min(top, points[2 * k + 1] as number);
      bottom = Math.max(bottom, points[2 * k + 1] as number);
    }
    const { through, added } = this.scene;
    const rowStart = Math.max(clip.y0 * SUB, sampleFrom(top));
    const rowEnd = Math.min(clip.y1 * SUB, sampleFrom(bottom));
    for (let r = rowStart; r < rowEnd; r++) {
      const crossings = crossingsAt(points, n, place(r));
      const offset = r * this.columns;
      for (let c = 0; c + 1 < crossings.length; c += 2) {
        const from = Math.max(clip.x0, (crossings[c] as number) + 0.5) * SUB;
        const to = Math.min(clip.x1, (crossings[c + 1] as number) + 0.5) * SUB;
        if (to <= from) continue;
        const a = Math.floor(from);
        const b = Math.ceil(to);
        for (let i = a; i < b; i++) {
          const at = offset + i;
          const seen = behind
            ? radiance * (through[at] as number) + (added[at] as number)
            : radiance;
          this.blend(at, seen, opacity * covered(i, from, to));
        }
        this.note(r, a, b);
      }
    }
  }

  /** Adds what the instant changed, times `weight`, and puts the working copy back. */
  endInstant(weight: number): void {
    const { radiance } = this.scene;
    const { work, change, spans } = this;
    for (let s = 0; s < this.spanCount; s++) {
      const r = spans[3 * s] as number;
      const a = spans[3 * s + 1] as number;
      const b = spans[3 * s + 2] as number;
      const offset = r * this.columns;
      for (let at = offset + a; at < offset + b; at++) {
        const still = radiance[at] as number;
        change[at] = (change[at] as number) + weight * ((work[at] as number) - still);
        // A span painted twice is put back the first time and adds nothing the second.
        work[at] = still;
      }
      if (a < (this.first[r] as number)) this.first[r] = a;
      if (b > (this.last[r] as number)) this.last[r] = b;
    }
    this.spanCount = 0;
  }

  /** Forgets the changes added up so far. */
  clear(): void {
    for (let r = 0; r < this.rows; r++) {
      const a = this.first[r] as number;
      const b = this.last[r] as number;
      if (b > a) this.change.fill(0, r * this.columns + a, r * this.columns + b);
      this.first[r] = this.columns;
      this.last[r] = 0;
    }
  }

  private blend(at: number, seen: number, share: number): void {
    this.work[at] = (1 - share) * (this.work[at] as number) + share * seen;
  }

  private note(r: number, a: number, b: number): void {
    if (3 * this.spanCount + 3 > this.spans.length) {
      const larger = new Int32Array(2 * this.spans.length);
      larger.set(this.spans);
      this.spans = larger;
    }
    this.spans[3 * this.spanCount] = r;
    this.spans[3 * this.spanCount + 1] = a;
    this.spans[3 * this.spanCount + 2] = b;
    this.spanCount++;
  }
}

/** Place of a sample in pixels: pixel k holds samples k SUB .. k SUB + SUB - 1 around k. */
export function place(sample: number): number {
  return (sample + 0.5) / SUB - 0.5;
}

/** Share of sample i covered by a span; places in samples, sample i from i to i + 1. */
function covered(i: number, from: number, to: number): number {
  return Math.min(to, i + 1) - Math.max(from, i);
}

/** First sample at or beyond a place in pixels. */
function sampleFrom(x: number): number {
  return Math.ceil((x + 0.5) * SUB - 0.5);
}

/** Where a polygon of n corners crosses an image row, left to right: inside between 0 and 1, 2 and 3, ... */
export function crossingsAt(points: ArrayLike<number>, n: number, y: number): number[] {
  const found: number[] = [];
  for (let k = 0, j = n - 1; k < n; j = k++) {
    const ya = points[2 * j + 1] as number;
    const yb = points[2 * k + 1] as number;
    if (ya <= y === yb <= y) continue;
    const xa = points[2 * j] as number;
    const xb = points[2 * k] as number;
    found.push(xa + ((y - ya) / (yb - ya)) * (xb - xa));
  }
  return found.length > 2 ? found.sort((p, q) => p - q) : orderTwo(found);
}

function orderTwo(pair: number[]): number[] {
  const [a, b] = pair;
  if (a !== undefined && b !== undefined && a > b) return [b, a];
  return pair;
}
