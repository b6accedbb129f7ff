import { ExitframeError } from '../core/reason';

/** A frame of more bytes is no film of a camera there is: its header is damaged. */
const MOST_BYTES = 2 ** 28;

/** Throws `impossibleSize` where a header states a frame without pixels, or one too large to be held. */
export function requireSize(
  name: string,
  width: number,
  height: number,
  bytesPerSample: number,
): void {
  const whole = Number.isInteger(width) && Number.isInteger(height);
  if (whole && width > 0 && height > 0 && width * height * bytesPerSample <= MOST_BYTES) return;
  throw new ExitframeError(
    'impossibleSize',
    `"${name}" states frames of ${width} x ${height} pixels, which cannot be.`,
    'Its header is damaged, or it is another kind of file: copy it from the camera again.',
    { values: { name, width: String(width), height: String(height) } },
  );
}
