import { seededRandom } from '../../../src/core/random';
import type { Outcome } from '../../../src/core/reason';
import type { BurstOptions } from '../../../src/seal/bracket';
import { type BurstReport, locateBurst } from '../../../src/seal/burst';
import { observeSeal } from '../../../src/seal/observe';
import type { SealClock } from '../../../src/seal/timing';
import type { SealObservation, SealView } from '../../../src/seal/types';
import { sealView } from '../../../src/seal/view';
import { drawScene, findComponents, type Scene } from './scene';

export const INTERVAL = 1 / 12_000;

/** An even clock without errors of its own. */
export const evenClock = (interval: number): SealClock => ({
  timeAt: (frame) => frame * interval,
  lineAt: () => 0,
  frameTimeU: 0,
  rateRelativeU: 0,
  lineTime: { value: 0, u: 0 },
});

/** A shot of the kind the launcher gives, with its phase against the frames and its looks drawn from the seed. */
export function randomScene(seed: number, changes: Partial<Scene> = {}): Scene {
  const random = seededRandom(seed, 7);
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const radius = 18;
  const burst = between(8, 9) * INTERVAL;
  const contact = burst + between(3, 6) * INTERVAL;
  return {
    width: 110,
    height: 76,
    plane: [22, 37],
    axis: [1, 0],
    ballRadius: radius,
    frames: 18,
    interval: INTERVAL,
    exposure: between(0.1, 0.3) * INTERVAL,
    film: random.uniform() < 0.5 ? between(185, 230) : between(25, 60),
    onset: burst - between(2.5, 5) * INTERVAL,
    burst,
    bulge: between(0.3, 0.7) * radius,
    power: between(1, 2.5),
    tearing: between(0.8, 2.5) * INTERVAL,
    collar: 0,
    fragments: 3 + Math.floor(between(0, 6)),
    speed: between(0.3, 0.8) * radius * (1 / INTERVAL),
    ball: { contact, speed: between(0.5, 1) * radius * (1 / INTERVAL) },
    noise: between(0.5, 2),
    seed,
    ...changes,
  };
}

export function viewOf(scene: Scene): SealView {
  const view = sealView({
    plane: scene.plane,
    axis: scene.axis,
    ballRadius: scene.ballRadius,
    region: null,
    frameWidth: scene.width,
    frameHeight: scene.height,
  });
  if (!view.ok) throw new Error(view.reason.message);
  return view.value;
}

export function observeScene(scene: Scene): SealObservation[] {
  const view = viewOf(scene);
  const { frames, background } = drawScene(scene);
  return frames.map((frame) => observeSeal(frame, background, view, findComponents));
}

export function reduceScene(
  scene: Scene,
  options: Partial<BurstOptions> = {},
): Outcome<BurstReport> {
  const limit = scene.ball === null ? null : Math.ceil(scene.ball.contact / scene.interval);
  return locateBurst(observeScene(scene), evenClock(scene.interval), viewOf(scene), {
    coverage: 0.95,
    exposure: { value: scene.exposure, u: 0 },
    burstBetween: null,
    ballFrameLimit: limit,
    contact: scene.ball?.contact ?? null,
    ...options,
  });
}
