import type { GreyFrame } from '../core/frame';
import type { ImagePoint } from '../core/units';
import { measureCentre } from './centre';
import type { Background, BallModel, FrameInspection } from './types';

/** One frame's fit near `at`, laid open. */
export function inspectCentre(
  frame: GreyFrame,
  background: Background,
  at: ImagePoint,
  ball: BallModel,
): FrameInspection {
  const reach = Math.ceil(1.6 * ball.radius + Math.hypot(...ball.blur) / 2 + 6);
  const left = Math.max(0, Math.round(at[0]) - reach);
  const top = Math.max(0, Math.round(at[1]) - reach);
  const right = Math.min(frame.width, Math.round(at[0]) + reach + 1);
  const bottom = Math.min(frame.height, Math.round(at[1]) + reach + 1);
  return {
    frame: frame.index,
    rect: [left, top, Math.max(1, right - left), Math.max(1, bottom - top)],
    measurement: measureCentre(frame, background, at, ball),
    model: null,
    residual: null,
    weight: null,
    outline: [],
  };
}
