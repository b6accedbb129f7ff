import type { FlightQuestion } from '../reduction/lookThrough';
import { ballSpan } from './passage';

/** What the picture of the whole flight shows. */
export interface FlightChoice {
  /** `apart`: only frames whose balls lie side by side; `all`: every frame. */
  readonly frames: 'apart' | 'all';
  /** `ball`: only around the measured centres; `moving`: fragments and film too. */
  readonly what: 'ball' | 'moving';
}

/** Centres farther apart than this many diameters lie side by side. */
const APART = 1.15;
/** Around a centre this many radii are shown: its blur and softness too. */
const DISC = 1.25;
/** Frames taken of a film in which no ball is known. */
const UNKNOWN_FRAMES = 40;

interface Centre {
  readonly frame: number;
  readonly x: number | null;
  readonly y: number | null;
  readonly used: boolean;
}

/** The frames to put into one picture, with the disc around the ball where only it is to show. */
export function flightFrames(
  positions: readonly Centre[],
  radius: number | null,
  frameCount: number,
  choice: FlightChoice,
): FlightQuestion['frames'] {
  const span = ballSpan(positions);
  if (span === null || radius === null) {
    const step = choice.frames === 'all' ? 1 : Math.max(1, Math.ceil(frameCount / UNKNOWN_FRAMES));
    return Array.from({ length: Math.ceil(frameCount / step) }, (_, i) => ({
      frame: i * step,
      disc: null,
    }));
  }
  let last: { readonly x: number; readonly y: number } | null = null;
  return positions.flatMap(({ frame, x, y, used }) => {
    if (!used || x === null || y === null) return [];
    const near = last !== null && Math.hypot(x - last.x, y - last.y) < 2 * APART * radius;
    if (choice.frames === 'apart' && near) return [];
    last = { x, y };
    return [{ frame, disc: choice.what === 'ball' ? { x, y, radius: DISC * radius } : null }];
  });
}
