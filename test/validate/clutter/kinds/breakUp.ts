import type { Point, Shape } from '../canvas';
import { cover, moving } from '../shapes';
import type { Stage } from '../stage';

/** The ball bursts into shards that fly apart; the frame after the last whole one shows them parted. */
export function addBreakUp(stage: Stage): void {
  const { random, path, exitTime, speed, width, muzzle, radius, ball } = stage;
  const share = random.between(0.4, 0.7);
  const last = Math.floor(exitTime + (share * (width - muzzle[0])) / speed);
  const moment = last + stage.exposure / 2 + 0.05;
  stage.breaksAt = moment;
  const count = Math.floor(random.between(4, 8));
  const turn = random.between(0, 2 * Math.PI);
  const bounds = Array.from({ length: count }, (_, k) => {
    const jitter = random.between(-0.25, 0.25);
    return turn + ((k + jitter) / count) * 2 * Math.PI;
  });
  const shards = bounds.map((from, k) => {
    const to = k + 1 < count ? (bounds[k + 1] as number) : (bounds[0] as number) + 2 * Math.PI;
    const out = (from + to) / 2 + random.between(-0.3, 0.3);
    const apart = random.between(1.5, 4);
    return {
      from,
      to,
      velocity: [apart * Math.cos(out), apart * Math.sin(out)] as Point,
      spin: random.between(-0.25, 0.25),
      middle: [
        0.6 * radius * Math.cos((from + to) / 2),
        0.6 * radius * Math.sin((from + to) / 2),
      ] as Point,
    };
  });
  const whole = ball;
  stage.ball = moving((time) => (time < moment ? whole.at(time) : null));
  for (const shard of shards) {
    stage.behindBall.push(
      moving((time) => {
        const age = time - moment;
        if (age < 0) return null;
        const [x, y] = path(time);
        const shape = whole.at(time);
        if (shape === null) return null;
        const [vx, vy] = shard.velocity;
        return moved(wedge(shape, [x, y], shard.from, shard.to), shard.middle, [x, y], {
          by: [vx * age, vy * age],
          turned: shard.spin * age,
        });
      }),
    );
  }
}

/** The part of a shape between two directions from a point. */
function wedge(shape: Shape, [cx, cy]: Point, from: number, to: number): Shape {
  const normalFrom = [-Math.sin(from), Math.cos(from)] as const;
  const normalTo = [Math.sin(to), -Math.cos(to)] as const;
  return {
    box: shape.box,
    paint(x, y, under) {
      const dx = x - cx;
      const dy = y - cy;
      const inside = Math.min(
        dx * normalFrom[0] + dy * normalFrom[1],
        dx * normalTo[0] + dy * normalTo[1],
      );
      const alpha = cover(inside);
      return alpha === 0 ? under : under + alpha * (shape.paint(x, y, under) - under);
    },
  };
}

/** A shape carried off and turned about its own middle. */
function moved(
  shape: Shape,
  middle: Point,
  [cx, cy]: Point,
  { by, turned }: { readonly by: Point; readonly turned: number },
): Shape {
  const c = Math.cos(turned);
  const s = Math.sin(turned);
  const ax = cx + middle[0];
  const ay = cy + middle[1];
  const [left, top, right, bottom] = shape.box;
  const reach = 0.6 * (right - left);
  return {
    box: [left + by[0] - reach, top + by[1] - reach, right + by[0] + reach, bottom + by[1] + reach],
    paint(x, y, under) {
      const dx = x - by[0] - ax;
      const dy = y - by[1] - ay;
      return shape.paint(ax + c * dx + s * dy, ay - s * dx + c * dy, under);
    },
  };
}
