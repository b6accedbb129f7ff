import { moving, reflected, shade, slab, soft, sphere, still } from '../shapes';
import type { Stage } from '../stage';

/** The ball's shadow on the wall behind it: soft, set off to one side, as fast as the ball. */
export function addShadow(stage: Stage): void {
  const { random, radius, muzzle } = stage;
  const offset = [random.between(-0.6, 1.2) * radius, random.between(0.5, 1.5) * radius] as const;
  const depth = random.between(0.35, 0.6);
  const softness = random.between(2.5, 6);
  const size = radius * random.between(1, 1.15);
  stage.behindBall.push(
    soft((time) => {
      const [x, y] = stage.path(time);
      // Light reaches the wall past the flange only once the ball is out.
      if (x < muzzle[0] - radius || time >= stage.breaksAt) return null;
      return shade([x + offset[0], y + offset[1]], size, softness, depth);
    }),
  );
}

/** A clear tube around the flight: its walls show faintly, and one of them mirrors the ball over its edge. */
export function addReflection(stage: Stage): void {
  const { random, radius, muzzle, light, albedo } = stage;
  const room = stage.wall(...muzzle);
  const end = stage.width + 20;
  for (const side of [-1, 1]) {
    const wall = muzzle[1] + side * 1.9 * radius;
    stage.beforeBall.push(
      still(slab([muzzle[0] - 5, wall - 1.5, end, wall + 1.5], () => 0.5, 0.3)),
    );
  }
  const side = random.pick([-1, 1]);
  const apart = radius * random.between(0.5, 1.3);
  // A bright room drowns the reflection of a dark ball.
  const strength = random.between(0.15, 0.3) / (1 + 3 * room);
  // Upside down, as in a mirror.
  const [lx, ly, lz] = light.towards;
  const mirrored = { ...light, towards: [lx, -ly, lz] as const };
  stage.beforeBall.push(
    moving((time) => {
      if (time >= stage.breaksAt) return null;
      const [x, y] = stage.path(time);
      return reflected(sphere([x, y + side * apart], radius, albedo, mirrored), strength, room);
    }),
  );
}
