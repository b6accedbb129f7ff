import { type Camera, expose } from './camera';
import { expectation, stillPicture } from './picture';
import type { Random } from './random';
import type { Backdrop, Ball, Fragment, Scene, Vector, Window } from './scene';

/** What the film is of: one ball crossing a scene that stands still. */
export interface FilmPlan {
  readonly width: number;
  readonly height: number;
  readonly backdrop: Backdrop;
  readonly softness: number;
  readonly camera: Camera;
  /** The ball in each frame that has it, and what flies before it. */
  readonly sightings: readonly { readonly ball: Ball; readonly fragment: Fragment | null }[];
  /** Frames without the ball, before and after. */
  readonly before: number;
  readonly after: number;
  /** Cells a pixel, in each direction, to render with; left out: as many as the centre to 1e-4 px needs. */
  readonly cells?: number;
}

export interface RenderedFrame {
  readonly index: number;
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
  readonly white: 255;
}

/** All frames of the film; the ball of `sightings[i]` is in frame `before + i`. */
export function renderFilm(plan: FilmPlan, random: Random): RenderedFrame[] {
  const { width, height, backdrop, softness, camera, before, after, cells } = plan;
  const empty = { backdrop, ball: null, fragment: null, softness };
  const still = stillPicture(backdrop, softness, { x0: 0, y0: 0, width, height });
  const frame = (index: number, expected: Float64Array): RenderedFrame => ({
    index,
    width,
    height,
    data: expose(expected, camera, random),
    white: 255,
  });
  const count = before + plan.sightings.length + after;
  return Array.from({ length: count }, (_, index) => {
    const seen = plan.sightings[index - before];
    if (seen === undefined) return frame(index, still);
    const scene: Scene = { ...empty, ...seen };
    const window = windowAround(scene, seen.ball, plan);
    const expected = still.slice();
    const part = expectation(scene, window, cells);
    for (let y = 0; y < window.height; y++) {
      expected.set(
        part.subarray(y * window.width, (y + 1) * window.width),
        (window.y0 + y) * width + window.x0,
      );
    }
    return frame(index, expected);
  });
}

/** The pixels of the image that a ball and a fragment before it may change. */
export function windowAround(
  { softness, fragment }: Pick<Scene, 'softness' | 'fragment'>,
  ball: Ball,
  image: { readonly width: number; readonly height: number },
): Window {
  // A fragment reaches no further than half a radius beyond the ball.
  const reach = (fragment ? 1.5 : 1) * ball.radius + 5 * softness + 2;
  const span = (at: number, sweep: number, size: number): [from: number, length: number] => {
    const from = Math.max(0, Math.floor(at - reach - Math.abs(sweep) / 2));
    const to = Math.min(size - 1, Math.ceil(at + reach + Math.abs(sweep) / 2));
    return [from, Math.max(0, to - from + 1)];
  };
  const [x0, width] = span(ball.x, ball.sweep[0], image.width);
  const [y0, height] = span(ball.y, ball.sweep[1], image.height);
  return { x0, y0, width, height };
}

/** Share of the ball's disc, at the middle of the exposure, that neither anything hides nor the image's edge cuts. */
export function visibleShare(
  ball: Ball,
  { flange }: Backdrop,
  fragment: Fragment | null,
  image: { readonly width: number; readonly height: number },
): number {
  let all = 0;
  let seen = 0;
  for (let i = -30; i <= 30; i++) {
    for (let j = -30; j <= 30; j++) {
      if (i * i + j * j > 900) continue;
      const at: Vector = [ball.x + (i / 30) * ball.radius, ball.y + (j / 30) * ball.radius];
      all++;
      if (at[0] < -0.5 || at[0] > image.width - 0.5) continue;
      if (at[1] < -0.5 || at[1] > image.height - 0.5) continue;
      const within = (side: { readonly normal: Vector; readonly offset: number }) =>
        side.normal[0] * at[0] + side.normal[1] * at[1] > side.offset;
      if (flange && within(flange)) continue;
      if (fragment?.sides.every(within)) continue;
      seen++;
    }
  }
  return seen / all;
}
