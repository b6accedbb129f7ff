import { failure, type Outcome, success } from '../core/reason';
import type { FramesPerSecond, Metres, Pixels } from '../core/units';
import type { CameraMode, CameraTrade } from '../shot/planning';

/** The picture has to be this many ball diameters high, for the background around the path. */
const DIAMETERS_HIGH = 3;
/** Cameras cut their pictures in steps of this many pixels, more or less. */
const STEP = 8;

/**
 * The largest picture along the flight that a camera takes at a rate: one held to a pixel rate gives up rows first, until
 * the picture is three ball diameters high, then width. Of a table, the widest mode that is fast enough.
 * Failure: `cameraTooSlow`.
 */
export function pictureAt(
  trade: CameraTrade,
  rate: FramesPerSecond,
  across: Metres,
  ballDiameter: Metres,
): Outcome<Omit<CameraMode, 'rate'>> {
  if (trade.kind === 'modes') {
    const fast = trade.modes.filter((mode) => mode.rate >= rate);
    const [first, ...others] = fast;
    if (first === undefined) return tooSlow(rate);
    const { width, height } = others.reduce((a, b) => (b.width > a.width ? b : a), first);
    return success({ width, height });
  }
  const { pixelsPerSecond, mostWidth, mostHeight } = trade;
  const pixels = pixelsPerSecond / rate;
  const rowsPerColumn = (DIAMETERS_HIGH * ballDiameter) / across;
  const width = inSteps(
    Math.min(mostWidth, mostHeight / rowsPerColumn, Math.sqrt(pixels / rowsPerColumn)),
  );
  const height = inSteps(Math.min(mostHeight, pixels / Math.max(width, 1)));
  return width > 0 && height > 0 ? success({ width, height }) : tooSlow(rate);
}

const inSteps = (size: number): Pixels => STEP * Math.floor(size / STEP);

const tooSlow = (rate: number): Outcome<never> =>
  failure(
    'cameraTooSlow',
    `The camera does not take pictures at ${rate.toFixed(0)} frames/s.`,
    'Check the pixel rate or the table of modes.',
    { rate: rate.toFixed(0) },
  );
