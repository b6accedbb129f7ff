import type { GreyFrame } from '../core/frame';
import { type Outcome, success } from '../core/reason';
import { buildBackground } from '../image/background';
import type { Background } from '../image/types';

/** So many first frames show the seal at rest; few, because a film may start to move soon after. */
export const REST_FRAMES = 8;

/**
 * The scene with the seal at rest, from the first frames of the clip, with the noise of the whole clip. The
 * background of the whole clip will not do for the seal: where most frames come after the burst it holds the
 * torn film, which hides the bulge.
 * Failures: those of `buildBackground`.
 */
export function sealReference(
  firstFrames: readonly GreyFrame[],
  scene: Background,
): Outcome<Background> {
  const rest = buildBackground(firstFrames.slice(0, REST_FRAMES));
  if (!rest.ok) return rest;
  const { level, averaged } = rest.value;
  return success({ ...scene, level, averaged });
}
