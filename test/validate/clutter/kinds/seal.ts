import type { Point, Thing } from '../canvas';
import type { Random } from '../random';
import { moving, plate, slantedDisc, soft } from '../shapes';
import type { Stage } from '../stage';
import { smoothNoise } from '../texture';

/** Torn pieces of the seal: most fly ahead of the ball, some it overtakes, some are discs of its size that tumble. */
export function addFragments(stage: Stage): void {
  const { random, radius } = stage;
  stage.beforeBall.push(sealOf(stage));
  const count = Math.floor(random.between(5, 10));
  for (let i = 0; i < count; i++) {
    const overtaken = i % 3 === 2;
    const path = pathOf(stage, overtaken ? random.between(0.55, 0.85) : random.between(1.2, 2.4));
    const spin = random.between(-0.5, 0.5);
    const turn = random.between(0, Math.PI);
    const brightness = stage.albedo * random.between(0.7, 1.1);
    const likeBall = i === 0 || random.chance(0.15);
    const size = likeBall ? radius * random.between(0.85, 1.05) : radius * random.between(0.2, 0.7);
    const corners = raggedPiece(random, size);
    const layer = random.chance(0.5) ? stage.behindBall : stage.beforeBall;
    layer.push(
      moving((time) => {
        const at = path(time);
        if (at === null) return null;
        if (!likeBall) return plate(at, corners, turn + spin * time, brightness);
        const slant = Math.abs(Math.cos(turn + spin * time));
        return slantedDisc(at, size, slant, turn, brightness);
      }),
    );
  }
}

/** The seal, seen from its edge, that bulges out of the muzzle until it tears. */
function sealOf({ muzzle, radius, exitTime, albedo }: Stage): Thing {
  const tears = exitTime - 4;
  const half = 1.2 * radius;
  return moving((time) => {
    if (time >= tears) return null;
    const bulge = 1.5 + 3 * Math.max(0, 1 + 0.3 * (time - tears));
    return slantedDisc(muzzle, half, bulge / half, 0, 0.8 * albedo);
  });
}

/** A straight path out of the muzzle at a multiple of the ball's speed; null while it is still inside. */
function pathOf(
  { random, muzzle, radius, speed, exitTime, slope }: Stage,
  faster: number,
): (time: number) => Point | null {
  const angle = slope + random.between(-0.16, 0.16);
  const from = muzzle[1] + random.between(-0.7, 0.7) * radius;
  const start = exitTime - (faster < 1 ? random.between(1, 5) : random.between(0, 3));
  const v = speed * faster;
  return (time) =>
    time < start
      ? null
      : [
          muzzle[0] + v * (time - start) * Math.cos(angle),
          from + v * (time - start) * Math.sin(angle),
        ];
}

/** A convex piece with 4 to 7 corners. */
function raggedPiece(random: Random, size: number): Point[] {
  const corners = Math.floor(random.between(4, 8));
  const flat = random.between(0.5, 1);
  return Array.from({ length: corners }, (_, k): Point => {
    const angle = ((k + random.between(-0.3, 0.3)) / corners) * 2 * Math.PI;
    return [size * Math.cos(angle), size * flat * Math.sin(angle)];
  });
}

/** Mist where the moist air expands: a jet that widens, thins out and drifts, before and around the ball. */
export function addHaze(stage: Stage): void {
  const { random, muzzle, radius, speed, exitTime, slope, albedo } = stage;
  const billows = smoothNoise(random, 1.1 * radius);
  const wisps = smoothNoise(random, 0.4 * radius);
  const dense = random.between(0.3, 0.6);
  const drift = speed * random.between(0.15, 0.6);
  const growth = random.between(0.5, 1.1);
  const spread = random.between(0.15, 0.35);
  const brightness = albedo * random.between(0.6, 0.9);
  const layer = random.chance(0.7) ? stage.inFront : stage.behindBall;
  layer.push(
    soft((time) => {
      const age = time - exitTime + 1.5;
      if (age <= 0) return null;
      const long = radius * (1 + 0.25 * growth * age);
      const x0 = muzzle[0] + 0.5 * radius + drift * age;
      const right = x0 + REACH * long;
      const halfAt = (x: number) => 0.6 * radius + spread * (x - muzzle[0]);
      const most = REACH * halfAt(right);
      const peak = dense * (1 - Math.exp(-age / 2)) * Math.exp(-age / 45);
      return {
        box: [Math.max(muzzle[0], x0 - REACH * long), muzzle[1] - most, right, muzzle[1] + most],
        paint(x, y, under) {
          if (x <= muzzle[0]) return under;
          const u = (x - x0) / long;
          const v = (y - muzzle[1] - slope * (x - muzzle[0])) / halfAt(x);
          const fall = Math.exp(-0.5 * (u * u + v * v)) - Math.exp(-0.5 * REACH ** 2);
          if (fall <= 0) return under;
          const root = 1 - Math.exp(-(x - muzzle[0]) / radius);
          const carried = x - 0.8 * drift * age + 900;
          const torn =
            1 + 0.5 * billows(carried, y + 900) + 0.25 * wisps(carried, y + 0.5 * age + 900);
          const alpha = Math.min(0.9, Math.max(0, peak * fall * root * torn));
          return under + alpha * (brightness - under);
        },
      };
    }),
  );
}

/** Standard widths out to which the mist is drawn. */
const REACH = 2.6;
