import { moving, slantedDisc, sphere } from '../shapes';
import type { Stage } from '../stage';

/** A disc of the ball's size that stands still and comes and goes, such as a lit gauge. */
export function addFlickeringDisc(stage: Stage): void {
  const { random, radius, muzzle, height, frames } = stage;
  const x = random.between(muzzle[0] + 4 * radius, stage.width - 2 * radius);
  const above = muzzle[1] - 2.6 * radius;
  const y = above > radius ? above : Math.min(height - radius, muzzle[1] + 2.4 * radius);
  const size = radius * random.between(0.9, 1.1);
  const bright = stage.albedo * random.between(0.6, 1);
  const lit = Array.from({ length: frames }, () => random.chance(0.4));
  stage.behindBall.push(
    moving((time) =>
      lit[Math.round(time)] === true ? slantedDisc([x, y], size, 1, 0, bright) : null,
    ),
  );
}

/** A ball-like thing that crosses the flight at another angle, behind or before the ball. */
export function addCrossing(stage: Stage): void {
  const { random, radius, exitTime, speed } = stage;
  const size = radius * random.between(0.85, 1.1);
  // Where and when it meets the ball's line; near the ball or away from it.
  const meets = exitTime + random.between(12, 24);
  const [mx, my] = stage.path(meets);
  const late = random.between(-5, 5);
  const angle = random.pick([-1, 1]) * random.between(0.7, 2.2);
  const v = speed * random.between(0.5, 1.1);
  const albedo = stage.albedo * random.between(0.8, 1);
  const layer = random.chance(0.5) ? stage.behindBall : stage.beforeBall;
  layer.push(
    moving((time) => {
      const t = time - meets - late;
      return sphere(
        [mx + v * t * Math.cos(angle), my + v * t * Math.sin(angle)],
        size,
        albedo,
        stage.light,
      );
    }),
  );
}

/** A wad of another size that comes out of the barrel behind the ball, slower. */
export function addFollower(stage: Stage): void {
  const { random, radius, muzzle, slope, exitTime } = stage;
  const size = radius * random.between(0.72, 0.86);
  const v = stage.speed * random.between(0.5, 0.8);
  const starts = exitTime + random.between(5, 10);
  const albedo = stage.albedo * random.between(0.75, 0.95);
  stage.behindBall.push(
    moving((time) => {
      const way = v * (time - starts);
      return sphere(
        [muzzle[0] + way * Math.cos(slope), muzzle[1] + way * Math.sin(slope)],
        size,
        albedo,
        stage.light,
      );
    }),
  );
}
