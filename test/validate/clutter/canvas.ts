export type Point = readonly [x: number, y: number];
/** Left, top, right, bottom, px. */
export type Box = readonly [number, number, number, number];

/** A thing as it stands at one instant. */
export interface Shape {
  /** It paints nothing outside. */
  readonly box: Box;
  /** Light at a place once it is drawn, of what is `under` it; linear in `under`. */
  paint(x: number, y: number, under: number): number;
}

/** Something in the scene; time runs in frames, 0 the middle of frame 0's exposure. */
export interface Thing {
  /** 'still': never moves. 'soft': has no edge, so one sample a pixel and exposure will do. */
  readonly nature: 'still' | 'moving' | 'soft';
  at(time: number): Shape | null;
}

/** Samples a pixel each way: enough, as every edge is drawn as a ramp of 2.7 px. */
const SUB = 2;
/** Distance a ball may move between two instants of an exposure, px. */
const INSTANT_STEP = 0.7;
const MOST_INSTANTS = 9;

const UNTOUCHED = 0;
const SOFT = 1;
const STILL = 2;
const MOVING = 3;

export interface Exposure {
  /** Middle of the exposure and its length, frames. */
  readonly time: number;
  readonly length: number;
  /** Speed of the ball, px a frame: sets how many instants make up the exposure. */
  readonly speed: number;
  /** How far the picture has moved on the sensor. */
  readonly shift: Point;
}

/** A still wall with things before it, drawn frame by frame: only pixels that something touches are drawn again. */
export class Canvas {
  readonly #touched: Uint8Array;
  /** The picture without what moves, kept for as long as the camera stands still. */
  #still: { readonly shift: Point; readonly picture: Float32Array } | null = null;

  constructor(
    readonly width: number,
    readonly height: number,
    readonly wall: (x: number, y: number) => number,
    /** Back to front. */
    readonly things: readonly Thing[],
  ) {
    this.#touched = new Uint8Array(width * height);
  }

  /** Light on each pixel over one exposure. */
  draw({ time, length, speed, shift }: Exposure): Float32Array {
    const picture = this.#stillPicture(shift).slice();
    const instants = Math.min(
      MOST_INSTANTS,
      Math.max(1, Math.ceil((length * speed) / INSTANT_STEP)),
    );
    this.#touched.fill(UNTOUCHED);
    const shapes = Array.from({ length: instants }, (_, k) => {
      const now = time + length * ((k + 0.5) / instants - 0.5);
      return this.things.flatMap(({ nature, at }) => {
        const shape = at(nature === 'moving' ? now : time);
        if (shape === null) return [];
        if (nature !== 'still') this.#touch(shape.box, nature === 'soft' ? SOFT : MOVING, shift);
        return [shape];
      });
    });
    this.#fill(picture, shapes, shift);
    return picture;
  }

  #stillPicture(shift: Point): Float32Array {
    const { width, height, wall } = this;
    const kept = this.#still;
    if (kept !== null && kept.shift[0] === shift[0] && kept.shift[1] === shift[1]) {
      return kept.picture;
    }
    const picture = new Float32Array(width * height);
    for (let y = 0, p = 0; y < height; y++) {
      for (let x = 0; x < width; x++, p++) picture[p] = wall(x - shift[0], y - shift[1]);
    }
    this.#touched.fill(UNTOUCHED);
    const shapes = this.things.flatMap((thing) => {
      const shape = thing.nature === 'still' ? thing.at(0) : null;
      if (shape === null) return [];
      this.#touch(shape.box, STILL, shift);
      return [shape];
    });
    this.#fill(picture, [shapes], shift);
    this.#still = { shift, picture };
    return picture;
  }

  #touch(box: Box, as: number, shift: Point): void {
    const left = Math.max(0, Math.floor(box[0] + shift[0]));
    const top = Math.max(0, Math.floor(box[1] + shift[1]));
    const right = Math.min(this.width - 1, Math.ceil(box[2] + shift[0]));
    const bottom = Math.min(this.height - 1, Math.ceil(box[3] + shift[1]));
    for (let y = top; y <= bottom; y++) {
      for (let p = y * this.width + left; p <= y * this.width + right; p++) {
        if ((this.#touched[p] as number) < as) this.#touched[p] = as;
      }
    }
  }

  #fill(picture: Float32Array, shapes: readonly (readonly Shape[])[], shift: Point): void {
    for (let py = 0, p = 0; py < this.height; py++) {
      for (let px = 0; px < this.width; px++, p++) {
        const touched = this.#touched[p];
        if (touched === UNTOUCHED) continue;
        const x = px - shift[0];
        const y = py - shift[1];
        const base = this.wall(x, y);
        const once = touched === SOFT;
        const instants = touched === MOVING ? shapes : shapes.slice(0, 1);
        let sum = 0;
        for (const inOrder of instants) {
          const here = inOrder.filter(({ box }) => reaches(box, x, y));
          sum += once ? through(here, x, y, base) : overPixel(here, x, y, base);
        }
        picture[p] = sum / instants.length;
      }
    }
  }
}

const reaches = (box: Box, x: number, y: number): boolean =>
  x >= box[0] - 1 && x <= box[2] + 1 && y >= box[1] - 1 && y <= box[3] + 1;

function overPixel(shapes: readonly Shape[], x: number, y: number, base: number): number {
  let sum = 0;
  for (let j = 0; j < SUB; j++) {
    for (let i = 0; i < SUB; i++) {
      sum += through(shapes, x + (i + 0.5) / SUB - 0.5, y + (j + 0.5) / SUB - 0.5, base);
    }
  }
  return sum / SUB ** 2;
}

function through(shapes: readonly Shape[], x: number, y: number, base: number): number {
  let light = base;
  for (const shape of shapes) light = shape.paint(x, y, light);
  return light;
}

/** Share of what is behind the shapes that they hide at a place. */
export function hidden(shapes: readonly Shape[], x: number, y: number): number {
  const seen = shapes.filter(({ box }) => reaches(box, x, y));
  return 1 - (through(seen, x, y, 1) - through(seen, x, y, 0));
}
