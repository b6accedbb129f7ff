import type { Random } from '../render/random';
import { capHeight, flown, growth, type SealPlan } from './sealDraw';

/** Pieces move no farther than this between two instants an exposure is summed over, px. */
const STRIDE = 2;
const FEWEST_INSTANTS = 6;
const MOST_INSTANTS = 30;
/** Sensor lines and optics: weights of a pixel's neighbours on one axis. */
const BLUR = [0.16, 0.68, 0.16] as const;
/** Turned so far, a petal lies against the outside of the tube. */
const PETAL_TURN = 1.9;

/** The grey frames of a seal's life, 8 bits; index i is frame i. */
export function paintSeal(plan: SealPlan, random: Random): Uint8Array[] {
  const ground = paintGround(plan, random);
  return Array.from({ length: plan.frames }, (_, frame) => {
    const light = expose(plan, ground, frame);
    return develop(plan, soften(light, plan.width, plan.height), random);
  });
}

/** A slope of the light, a slow texture; the tube and its ring are dark. */
function paintGround(plan: SealPlan, random: Random): Float32Array {
  const tilt = [random.uniform(-0.15, 0.15), random.uniform(-0.15, 0.15)] as const;
  const waves = Array.from({ length: 4 }, () => ({
    x: random.uniform(-0.4, 0.4),
    y: random.uniform(-0.4, 0.4),
    phase: random.uniform(0, 2 * Math.PI),
    height: random.uniform(0, 3),
  }));
  const ground = new Float32Array(plan.width * plan.height);
  eachPixel(plan, (at, along, across) => {
    let grey = plan.air + tilt[0] * along + tilt[1] * across;
    for (const w of waves) grey += w.height * Math.sin(w.x * along + w.y * across + w.phase);
    const tube = Math.abs(across) < 1.35 * plan.ballRadius ? cover(-along) : 0;
    ground[at] = grey + (0.35 * plan.air - grey) * tube;
  });
  return ground;
}

function expose(plan: SealPlan, ground: Float32Array, frame: number): Float32Array {
  const light = ground.slice();
  const first = frame - plan.exposure / 2;
  const last = frame + plan.exposure / 2;
  if (last <= plan.onset) return light;
  const fastest = Math.max(plan.ball.speed, 1.3 * plan.speed, plan.haze?.speed ?? 0);
  const count = Math.round(
    Math.min(MOST_INSTANTS, Math.max(FEWEST_INSTANTS, (fastest * plan.exposure) / STRIDE)),
  );
  const instants = Array.from({ length: count }, (_, k) =>
    instantOf(plan, first + (plan.exposure * (k + 0.5)) / count),
  );
  const farthest =
    plan.bulge.height + 2 * plan.ballRadius + fastest * Math.max(0, last - plan.burst);
  eachPixel(plan, (at, along, across) => {
    if (along < -1 || along > farthest) return;
    const grey = ground[at] as number;
    let sum = 0;
    for (const instant of instants) sum += instant(grey, along, across);
    light[at] = sum / count;
  });
  return light;
}

/** What a place is painted at one instant, given the ground there. */
function instantOf(plan: SealPlan, time: number) {
  const since = time - plan.burst;
  const film = since <= 0 ? wholeFilm(plan, growth(plan, time)) : tornFilm(plan, since);
  const shards = plan.shards
    .filter(({ release }) => since > Math.max(0, release))
    .map(({ along, across, half, release, speed, drift, tone }) => {
      const t = since - release;
      return {
        at: along + flown(plan, speed, t),
        across: across + drift * t,
        // It tumbles.
        halfAlong: half[0] * Math.max(0.55, 1 - 0.3 * t),
        halfAcross: half[1],
        grey: plan.air + tone * (plan.film - plan.air),
      };
    });
  const haze = since > 0 ? plan.haze : null;
  const hazeReach = haze === null ? 0 : plan.bulge.height * 0.5 + haze.speed * since ** 0.8;
  const nose = (time - plan.ball.contact) * plan.ball.speed;
  return (ground: number, along: number, across: number): number => {
    let grey = ground;
    if (haze !== null) {
      const s = (along - 0.4 * hazeReach) / (0.4 * hazeReach + 1);
      const q = across / (haze.wide * (0.4 * hazeReach + 1) + 2);
      const far = s * s + q * q;
      if (far < 12) grey += (215 - grey) * haze.opacity * Math.exp(-far) * cover(along);
    }
    const share = Math.min(cover(along), film(along, across));
    grey += (plan.film - grey) * share;
    for (const shard of shards) {
      const s = along - shard.at;
      const q = across - shard.across;
      const inside = Math.min(
        cover(shard.halfAlong - Math.abs(s)),
        cover(shard.halfAcross - Math.abs(q)),
      );
      if (inside > 0) grey += (shard.grey - grey) * inside;
    }
    if (along < nose + 1) {
      const s = along - nose + plan.ballRadius;
      const d = Math.sqrt(s * s + across * across);
      grey += (plan.ball.grey - grey) * Math.min(cover(along), cover(plan.ballRadius - d));
    }
    return grey;
  };
}

type Coverage = (along: number, across: number) => number;

const wholeFilm =
  (plan: SealPlan, grown: number): Coverage =>
  (along, across) =>
    along > plan.bulge.height * grown + 0.5
      ? 0
      : cover(capHeight(plan, across, grown) - along) - cover(-along);

/** The film itself, its shards apart: continuous with the whole one at the burst. */
function tornFilm(plan: SealPlan, since: number): Coverage {
  const { half } = plan.bulge;
  const whole: Coverage = wholeFilm(plan, 1);
  const torn = Math.min(1, since / plan.tearing);
  const way = flown(plan, plan.speed, since);
  switch (plan.kind) {
    case 'centre': {
      const slack = Math.max(0.12, 1 - torn);
      const rest = wholeFilm(plan, slack);
      const width = torn * 2 * half;
      return (along, across) =>
        Math.min(rest(along, across), cover(Math.abs(across - plan.tearAt) - width / 2));
    }
    case 'rim': {
      // It swings about the rim that still holds.
      const side = Math.sign(plan.tearAt);
      return (along, across) => {
        const lifted = way * Math.min(1, Math.max(0, 0.5 + (0.5 * side * across) / half));
        return Math.min(whole(along - lifted, across), cover(along - lifted));
      };
    }
    case 'petals': {
      const turn = -Math.min(PETAL_TURN, way / Math.hypot(plan.bulge.height, half));
      const c = Math.cos(turn);
      const s = Math.sin(turn);
      return (along, across) => {
        let share = 0;
        for (const side of [-1, 1]) {
          // Turned back about its root, the place was here in the whole film.
          const q = side * across - half;
          const x = along * c - q * s;
          const y = side * (half + along * s + q * c);
          const part = Math.min(whole(x, y), cover(x), cover(side * (y - plan.tearAt)));
          share = Math.max(share, part);
        }
        return share;
      };
    }
    case 'pieces': {
      const edges = strips(plan).map(
        ([from, to, factor]) => [from, to, flown(plan, factor * plan.speed, since)] as const,
      );
      const thin = Math.max(0.5, 1 - 0.35 * since);
      return (along, across) => {
        let share = 0;
        for (const [from, to, out] of edges) {
          const middle = (from + to) / 2;
          const drift = 0.15 * way * (middle / half);
          const q = middle + (across - middle - drift) / thin;
          if (q < from - 1 || q > to + 1) continue;
          const x = along - out;
          const part = Math.min(
            whole(x, q),
            cover(x),
            cover(Math.min(q - from, to - q) * (thin === 1 ? 1 : thin)),
          );
          share = Math.max(share, thin === 1 && q >= from && q <= to ? whole(x, q) : part);
        }
        return share;
      };
    }
  }
}

/** The film cut across into pieces about the tear, each with its own share of the speed. */
function strips({ bulge, tearAt }: SealPlan): readonly (readonly [number, number, number])[] {
  const { half } = bulge;
  const cuts = [-half, (tearAt - half) / 2, tearAt, (tearAt + half) / 2, half];
  return [0.85, 1.15, 1, 0.75].map(
    (factor, i) => [cuts[i] ?? 0, cuts[i + 1] ?? 0, factor] as const,
  );
}

function soften(light: Float32Array, width: number, height: number): Float32Array {
  const [side, middle] = BLUR;
  const rows = new Float32Array(light.length);
  const out = new Float32Array(light.length);
  for (let at = 0; at < light.length; at++) {
    const x = at % width;
    const left = light[x > 0 ? at - 1 : at] as number;
    const right = light[x < width - 1 ? at + 1 : at] as number;
    rows[at] = side * (left + right) + middle * (light[at] as number);
  }
  for (let at = 0; at < light.length; at++) {
    const above = rows[at >= width ? at - width : at] as number;
    const below = rows[at < width * (height - 1) ? at + width : at] as number;
    out[at] = side * (above + below) + middle * (rows[at] as number);
  }
  return out;
}

function develop(plan: SealPlan, light: Float32Array, random: Random): Uint8Array {
  return Uint8Array.from(light, (grey) => {
    const share = 1 - plan.photons + (plan.photons * Math.max(0, grey)) / Math.max(1, plan.film);
    const shot = grey + plan.noise * Math.sqrt(share) * random.normal(0, 1);
    return Math.round(Math.min(255, Math.max(0, shot)));
  });
}

function eachPixel(
  { width, height, plane, axis }: SealPlan,
  visit: (at: number, along: number, across: number) => void,
): void {
  const [px, py] = plane;
  const [ax, ay] = axis;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const dx = x - px;
      const dy = y - py;
      visit(y * width + x, dx * ax + dy * ay, dy * ax - dx * ay);
    }
  }
}

/** Share of a pixel inside an edge `depth` px away. */
const cover = (depth: number): number => Math.min(1, Math.max(0, depth + 0.5));
