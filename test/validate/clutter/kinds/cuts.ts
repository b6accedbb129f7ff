import { slab, still } from '../shapes';
import type { Stage } from '../stage';

/** The picture ends close to the flight line: its upper or lower edge cuts the ball. */
export function addFrameCut(stage: Stage): void {
  // The camera looks higher or lower, so the whole scene moves, launcher and all.
  const { random, radius, muzzle, height } = stage;
  const depth = random.between(0.1, 0.8) * radius;
  const far = stage.path(stage.frames)[1];
  stage.offset = [0, far < muzzle[1] ? depth - far : height - 1 - depth - far];
}

/** An upright post before the flight hides part of the ball as it passes. */
export function addPost(stage: Stage): void {
  const { random, radius, width, muzzle, height } = stage;
  const x = random.between(muzzle[0] + 4 * radius, width - 4 * radius);
  const half = random.between(0.2, 0.5) * radius;
  const tone = random.between(0.1, 0.5);
  stage.beforeBall.push(
    still(
      slab(
        [x - half, -40, x + half, height + 40],
        (px) => tone * (1 - 0.3 * ((px - x) / half) ** 2),
      ),
    ),
  );
}

/** The flange carries on as a clear tube that dims what is in it; it ends part-way. */
export function addTubeEnd(stage: Stage): void {
  const { random, radius, muzzle } = stage;
  const length = random.between(3, 9) * radius;
  const half = 1.35 * radius;
  const dims = random.between(0.25, 0.45);
  const [x, y] = muzzle;
  stage.beforeBall.push(
    still(slab([x - 5, y - half, x + length, y + half], () => 0.06, dims)),
    still(slab([x - 5, y - half - 2, x + length, y - half], () => 0.55, 0.7)),
    still(slab([x - 5, y + half, x + length, y + half + 2], () => 0.55, 0.7)),
    still(slab([x + length - 2, y - half, x + length, y + half], () => 0.55, 0.5)),
  );
}
