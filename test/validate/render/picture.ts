import { coverOfCell } from './cell';
import type { Backdrop, Ball, HalfPlane, Scene, Vector, Window } from './scene';
import { brightness } from './surface';

/** Cells a pixel in each direction. */
const CELLS = 8;
/** Instants of an exposure are this close, px: the blur, at least 0.5 px, joins them up. */
const INSTANT_STEP = 0.5;
/** An outline not drawn out. */
const ROUND: Vector = [1, 1];
/** The blur is followed to so many standard deviations. */
const BLUR_REACH = 4.5;

/**
 * Expected grey value of each pixel of the window, row by row: the scene averaged over cells of a
 * fraction of a pixel, edges by their exact area, blurred by the optics and gathered by the pixels.
 */
export function expectation(scene: Scene, window: Window, cells = CELLS): Float64Array {
  const { width, height } = window;
  const kernel = pixelKernel(scene.softness, cells);
  const reach = (kernel.length - cells) / 2;
  const rows = height * cells + 2 * reach;
  const line = new CellLine(scene, window, cells, reach);
  const gathered = new Float64Array(rows * width);
  for (let r = 0; r < rows; r++) {
    const values = line.at(window.y0 - 0.5 + (r - reach + 0.5) / cells);
    for (let x = 0; x < width; x++) {
      let sum = 0;
      const base = x * cells;
      for (let k = 0; k < kernel.length; k++) {
        sum += (kernel[k] as number) * (values[base + k] as number);
      }
      gathered[r * width + x] = sum;
    }
  }
  const out = new Float64Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let k = 0; k < kernel.length; k++) {
      const weight = kernel[k] as number;
      const from = (y * cells + k) * width;
      const to = y * width;
      for (let x = 0; x < width; x++) {
        out[to + x] = (out[to + x] as number) + weight * (gathered[from + x] as number);
      }
    }
  }
  return out;
}

/**
 * Expected grey value of each pixel of the backdrop alone, in closed form where no flange stands in it: a
 * slope stays as it is, a wave keeps its place and loses what its blur and the pixel's area average out.
 */
export function stillPicture(backdrop: Backdrop, softness: number, window: Window): Float64Array {
  const { level, slope, waves, flange } = backdrop;
  if (flange) return expectation({ backdrop, ball: null, fragment: null, softness }, window);
  const left = waves.map(
    ({ wave: [kx, ky], amplitude }) =>
      amplitude *
      Math.exp(-0.5 * softness ** 2 * (kx * kx + ky * ky)) *
      sinc(kx / 2) *
      sinc(ky / 2),
  );
  const out = new Float64Array(window.width * window.height);
  for (let p = 0; p < out.length; p++) {
    const x = window.x0 + (p % window.width);
    const y = window.y0 + Math.floor(p / window.width);
    let value = level + slope[0] * x + slope[1] * y;
    for (let i = 0; i < waves.length; i++) {
      const { wave, phase } = waves[i] as Backdrop['waves'][number];
      value += (left[i] as number) * Math.cos(wave[0] * x + wave[1] * y + phase);
    }
    out[p] = value;
  }
  return out;
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(x) / x);

/** Weights of the cells around a pixel: its own width drawn out by the optics' blur. */
function pixelKernel(softness: number, cells: number): Float64Array {
  // Averaging over a cell has already blurred by the cell's own variance.
  const sigma = Math.sqrt(Math.max(0, (softness * cells) ** 2 - 1 / 12));
  const reach = Math.ceil(BLUR_REACH * sigma);
  const kernel = new Float64Array(cells + 2 * reach);
  for (let d = -reach; d <= reach; d++) {
    const weight = sigma > 0 ? Math.exp(-0.5 * (d / sigma) ** 2) : 1;
    for (let j = 0; j < cells; j++) {
      kernel[d + reach + j] = (kernel[d + reach + j] as number) + weight;
    }
  }
  const total = kernel.reduce((sum, weight) => sum + weight, 0);
  return kernel.map((weight) => weight / total);
}

/** The scene along one line of cells at a time. */
class CellLine {
  private readonly length: number;
  private readonly left: number;
  private readonly size: number;
  private readonly values: Float64Array;
  private readonly cover: Float64Array;
  /** Brightness of the ball times its cover; of an even ball left at 0. */
  private readonly glow: Float64Array;
  /** Changes of cover from one cell to the next where it is even. */
  private readonly change: Float64Array;
  private readonly waves: { cos: Float64Array; sin: Float64Array }[];
  private readonly shade: ((u: number, v: number) => number) | null;

  constructor(
    private readonly scene: Scene,
    window: Window,
    cells: number,
    reach: number,
  ) {
    this.length = window.width * cells + 2 * reach;
    this.size = 1 / cells;
    this.left = window.x0 - 0.5 + (0.5 - reach) / cells;
    this.values = new Float64Array(this.length);
    this.cover = new Float64Array(this.length);
    this.glow = new Float64Array(this.length);
    this.change = new Float64Array(this.length + 1);
    this.waves = scene.backdrop.waves.map(({ wave }) => ({
      cos: this.values.map((_, c) => Math.cos(wave[0] * this.x(c))),
      sin: this.values.map((_, c) => Math.sin(wave[0] * this.x(c))),
    }));
    const light = scene.ball?.light ?? null;
    this.shade = light && brightness(light);
  }

  private x(cell: number): number {
    return this.left + cell * this.size;
  }

  /** Grey values of the cells at height y. The array is used again for the next line. */
  at(y: number): Float64Array {
    const { backdrop, ball, fragment } = this.scene;
    this.layBackdrop(backdrop, y);
    if (ball) this.layBall(ball, y);
    if (backdrop.flange) this.lay([backdrop.flange], backdrop.flange.level, y);
    if (fragment) this.lay(fragment.sides, fragment.level, y);
    return this.values;
  }

  private layBackdrop({ level, slope, waves }: Backdrop, y: number): void {
    const { values, length, size } = this;
    const start = level + slope[1] * y + slope[0] * this.left;
    for (let c = 0; c < length; c++) values[c] = start + slope[0] * size * c;
    waves.forEach(({ wave, phase, amplitude }, i) => {
      const across = this.waves[i];
      if (!across) return;
      const a = amplitude * Math.cos(wave[1] * y + phase);
      const b = amplitude * Math.sin(wave[1] * y + phase);
      for (let c = 0; c < length; c++) {
        values[c] =
          (values[c] as number) + a * (across.cos[c] as number) - b * (across.sin[c] as number);
      }
    });
  }

  private layBall(ball: Ball, y: number): void {
    const { values, cover, glow, change, length } = this;
    const sweep = Math.hypot(...ball.sweep);
    const [, tall] = ball.drawnOut ?? ROUND;
    if (Math.abs(y - ball.y) > tall * ball.radius + sweep + 1) return;
    cover.fill(0);
    glow.fill(0);
    change.fill(0);
    const instants = Math.max(1, Math.ceil(sweep / INSTANT_STEP));
    for (let k = 0; k < instants; k++) {
      const t = (k + 0.5) / instants - 0.5;
      this.layInstant(
        ball,
        ball.x + t * ball.sweep[0],
        y - ball.y - t * ball.sweep[1],
        1 / instants,
      );
    }
    let even = 0;
    for (let c = 0; c < length; c++) {
      even += change[c] as number;
      const share = (cover[c] as number) + even;
      const bright = this.shade ? (glow[c] as number) : share;
      values[c] = (values[c] as number) * (1 - share) + ball.brightness * bright;
    }
  }

  /** Adds the ball as it is at one instant, its middle at x = `middle` and `dy` above this line. */
  private layInstant(ball: Ball, middle: number, above: number, weight: number): void {
    const { cover, glow, change, length, size, left, shade } = this;
    const { radius } = ball;
    // In lengths in which the outline is a circle.
    const [wide, tall] = ball.drawnOut ?? ROUND;
    const dy = above / tall;
    const outer2 = (radius + size) ** 2 - dy * dy;
    if (outer2 <= 0) return;
    const outer = wide * Math.sqrt(outer2);
    const inner = wide * Math.sqrt(Math.max(0, (radius - size) ** 2 - dy * dy));
    const first = Math.max(0, Math.ceil((middle - outer - left) / size));
    const last = Math.min(length - 1, Math.floor((middle + outer - left) / size));
    const firstInner =
      inner > 0 ? Math.max(0, Math.ceil((middle - inner - left) / size)) : last + 1;
    const lastInner =
      inner > 0 ? Math.min(length - 1, Math.floor((middle + inner - left) / size)) : last;
    const inside = firstInner <= lastInner;
    if (inside) {
      change[firstInner] = (change[firstInner] as number) + weight;
      change[lastInner + 1] = (change[lastInner + 1] as number) - weight;
    }
    const v = dy / radius;
    for (let c = first; c <= last; c++) {
      const dx = (left + c * size - middle) / wide;
      let share = weight;
      if (!inside || c < firstInner || c > lastInner) {
        const distance = Math.hypot(dx, dy);
        share *= coverOfCell(radius - distance, dx / distance / wide, dy / distance / tall, size);
        if (share === 0) continue;
        cover[c] = (cover[c] as number) + share;
      } else if (shade === null) {
        c = lastInner;
        continue;
      }
      if (shade !== null) glow[c] = (glow[c] as number) + share * shade(dx / radius, v);
    }
  }

  /** Covers what lies within all the half-planes. */
  private lay(sides: readonly HalfPlane[], level: number, y: number): void {
    const { values, length, size } = this;
    for (let c = 0; c < length; c++) {
      const x = this.x(c);
      let share = 1;
      for (const { normal, offset } of sides) {
        const depth = normal[0] * x + normal[1] * y - offset;
        if (depth > size) continue;
        share *= coverOfCell(depth, normal[0], normal[1], size);
        if (share === 0) break;
      }
      if (share > 0) values[c] = (values[c] as number) * (1 - share) + level * share;
    }
  }
}
