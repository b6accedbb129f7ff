import type { GreyFrame } from '../core/frame';
import type { Pixels } from '../core/units';
import type { Background } from './types';

/** Part of a frame to take over: a disc around the ball. */
export interface CompositeDisc {
  readonly x: Pixels;
  readonly y: Pixels;
  readonly radius: Pixels;
}

/** Changes below so many standard deviations of the noise are none: the noise of many frames must not add up. */
const LEAST_SIGMAS = 5;
/** Nor those below this share of white: compression wavers by about as much around what moves. */
const LEAST_SHARE = 0.012;

/** What moves, of many frames in one picture over the still scene. A picture to look at: nothing is measured on it. */
export interface Composite {
  /** Takes over what differs from the scene, within the disc or anywhere; where frames overlap the strongest change wins. */
  add(frame: GreyFrame, disc: CompositeDisc | null): void;
  picture(): GreyFrame;
}

export function createComposite(scene: Background): Composite {
  const { width, height, level, white, noise } = scene;
  const data = white > 255 ? new Uint16Array(level.length) : new Uint8Array(level.length);
  /** How much a pixel must differ from the scene to be taken over, grey values. */
  const toBeat = new Float32Array(level.length);
  for (let p = 0; p < level.length; p++) {
    const grey = level[p] as number;
    data[p] = Math.round(Math.min(Math.max(grey, 0), white));
    const sigma = Math.sqrt(Math.max(0, noise.readVariance + noise.gain * grey));
    toBeat[p] = Math.max(LEAST_SIGMAS * sigma, LEAST_SHARE * white);
  }
  return {
    add(frame, disc) {
      const rows = disc === null ? [0, height - 1] : span(disc.y, disc.radius, height);
      for (let y = rows[0] as number; y <= (rows[1] as number); y++) {
        const half = disc === null ? null : Math.sqrt(disc.radius ** 2 - (y - disc.y) ** 2);
        if (Number.isNaN(half)) continue;
        const columns = disc === null || half === null ? [0, width - 1] : span(disc.x, half, width);
        for (let x = columns[0] as number; x <= (columns[1] as number); x++) {
          const p = y * width + x;
          const grey = frame.data[p] as number;
          const change = Math.abs(grey - (level[p] as number));
          if (change <= (toBeat[p] as number)) continue;
          toBeat[p] = change;
          data[p] = grey;
        }
      }
    },
    picture: () => ({ index: -1, width, height, data, white }),
  };
}

/** Whole pixels within `reach` of a place, inside the image. */
const span = (place: number, reach: number, size: number): readonly [number, number] => [
  Math.max(0, Math.ceil(place - reach)),
  Math.min(size - 1, Math.floor(place + reach)),
];
