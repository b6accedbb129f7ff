/** A place or displacement in the image, px; (0, 0) is the middle of the top-left pixel, y points down. */
export type Vector = readonly [x: number, y: number];

/** The half-plane on the side its unit normal points to: normal . place > offset. */
export interface HalfPlane {
  readonly normal: Vector;
  readonly offset: number;
}

/** A wave of the background's texture: amplitude times cos(wave . place + phase). */
interface Wave {
  readonly wave: Vector;
  readonly phase: number;
  readonly amplitude: number;
}

/** What stands still. Grey values. */
export interface Backdrop {
  readonly level: number;
  /** Grey values a pixel. */
  readonly slope: Vector;
  readonly waves: readonly Wave[];
  /** Stands before the ball. */
  readonly flange: (HalfPlane & { readonly level: number }) | null;
}

/** A matt surface under ambient light and one distant lamp, darker towards the limb. */
export interface Light {
  /** Brightness by ambient light, for a lamp of 1 - ambient. */
  readonly ambient: number;
  /** Towards the lamp: angle in the image from x towards y, and from the line of sight, radians. */
  readonly azimuth: number;
  readonly tilt: number;
  /** Brightness lost at the limb, as a share. */
  readonly limb: number;
}

export interface Ball {
  /** Middle in the middle of the exposure. */
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Half axes of its outline across and down, as multiples of the radius; left out: a circle. Near 1, as perspective makes them. */
  readonly drawnOut?: Vector;
  /** Displacement during the exposure. */
  readonly sweep: Vector;
  /** Grey value of an even disc; that of a fully lit point of a matt one. */
  readonly brightness: number;
  /** Null: an even disc. */
  readonly light: Light | null;
}

/** Something before the ball in one frame only: a convex polygon, as the half-planes it is within. */
export interface Fragment {
  readonly sides: readonly HalfPlane[];
  readonly level: number;
}

export interface Scene {
  readonly backdrop: Backdrop;
  readonly ball: Ball | null;
  readonly fragment: Fragment | null;
  /** Standard deviation of the blur by the optics, without that by the pixel's own area, px. */
  readonly softness: number;
}

/** Part of the image, in whole pixels. */
export interface Window {
  readonly x0: number;
  readonly y0: number;
  readonly width: number;
  readonly height: number;
}
