/**
 * Unit flavours. A plain number may be given where a unit is asked for, but a value already marked
 * with one unit does not pass for another: `const t: Seconds = lengthInMetres` fails to compile.
 */
type Flavour<Unit extends string> = number & { readonly unit?: Unit };

export type Seconds = Flavour<'s'>;
export type Metres = Flavour<'m'>;
export type Pixels = Flavour<'px'>;
export type Radians = Flavour<'rad'>;
export type MetresPerPixel = Flavour<'m/px'>;
export type FramesPerSecond = Flavour<'1/s'>;

/** A point in the upright image: x right, y down, pixel centres at whole numbers, in pixels. */
export type ImagePoint = readonly [x: Pixels, y: Pixels];
/** A direction in the upright image; consumers normalise it. */
export type ImageVector = readonly [dx: number, dy: number];
/** x, y of the top-left pixel and the size, in whole pixels. */
export type ImageRect = readonly [x: Pixels, y: Pixels, width: Pixels, height: Pixels];
