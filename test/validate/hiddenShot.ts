import type { Random } from './render/random';
import type { Backdrop, Ball, Fragment, Vector } from './render/scene';
import {
  drawLook,
  evenNumber,
  FRAMES,
  inFullView,
  type LookKind,
  type Shot,
  type Sighting,
  SOFTNESS,
} from './shot';

/** Frames of each kind in a shot. */
const BEHIND = 6;
const WHOLE = 8;
const BROKEN = 5;
/** Cuts within this of the ball's middle leave about half of it, radii. */
const HALF = 0.2;

/**
 * A ball that comes from behind a flange, is in full view for some frames, in others with a fragment
 * before it, and leaves over the frame's edge; slow at both ends, so that many frames show half of it.
 */
export function drawHiddenShot(kind: LookKind, random: Random): Shot {
  const { radius } = kind;
  const look = drawLook(kind, random);
  const softness = random.uniform(...SOFTNESS);
  const forwards = random.uniform(0, 1) < 0.5;
  const slant = random.uniform(-0.12, 0.12);
  const height = evenNumber(2 * radius + 44);
  // Along x from the flange's edge at 0, in radii.
  const middle = 1.15 + 0.4 * (WHOLE + BROKEN);
  const offsets = [
    ...cuts(BEHIND, random),
    ...Array.from({ length: WHOLE + BROKEN }, (_, i) => 1.15 + 0.4 * i + random.uniform(-0.1, 0.1)),
    ...cuts(BEHIND, random)
      .map((cut) => middle + 1.1 - cut)
      .reverse(),
  ];
  const width = evenNumber(0.6 * radius + (middle + 1.1) * radius);
  const flangeAt = width - 0.5 - (middle + 1.1) * radius;
  // Mirrored where the ball flies to the left.
  const place = (x: number): number => (forwards ? x : width - 1 - x);
  const sign = forwards ? 1 : -1;
  const turn = random.uniform(-0.2, 0.2);
  const normal: Vector = [-sign * Math.cos(turn), Math.sin(turn)];
  const through: Vector = [place(flangeAt), height / 2];
  const flange = {
    normal,
    offset: normal[0] * through[0] + normal[1] * through[1],
    level: random.uniform(60, 150),
  };
  const backdrop: Backdrop = { ...look.backdrop, flange };
  const row = height / 2 + random.uniform(-1, 1);
  const broken = brokenFrames(random);
  const sightings = offsets.map((offset, i): Sighting => {
    const x = place(flangeAt + offset * radius);
    const y = row + slant * (x - width / 2) * 0.2;
    const ball: Ball = { ...look.ball, x, y, sweep: [0, 0] };
    if (i < BEHIND) {
      const towards = Math.atan2(normal[1], normal[0]);
      return { ball, fragment: null, hiddenBy: 'flange', hiddenTowards: towards };
    }
    if (i >= offsets.length - BEHIND) {
      const towards = forwards ? 0 : Math.PI;
      return { ball, fragment: null, hiddenBy: 'frame edge', hiddenTowards: towards };
    }
    if (!broken.has(i - BEHIND)) return inFullView(ball);
    const towards = random.uniform(-Math.PI, Math.PI);
    const cut = random.uniform(-HALF, HALF) * radius;
    const fragment = fragmentAcross(ball, cut, towards, random.uniform(50, 180));
    return { ball, fragment, hiddenBy: 'fragment', hiddenTowards: towards };
  });
  const rest = FRAMES - sightings.length;
  return {
    width,
    height,
    backdrop,
    softness,
    camera: look.camera,
    sightings,
    before: rest >> 1,
    after: rest - (rest >> 1),
    axis: [sign, 0],
    contrast: look.contrast,
  };
}

/** Distances of the ball's middle from an edge that hides it, radii, from hidden to whole: most show half of it. */
function cuts(count: number, random: Random): number[] {
  const half = Array.from({ length: count - 2 }, () => random.uniform(-HALF, HALF));
  return [...half, random.uniform(-0.5, -HALF), random.uniform(HALF, 0.9)].sort((a, b) => a - b);
}

/** Which of the frames between have a fragment before the ball. */
function brokenFrames(random: Random): ReadonlySet<number> {
  const chosen = new Set<number>();
  while (chosen.size < BROKEN) chosen.add(Math.floor(random.uniform(0, WHOLE + BROKEN)));
  return chosen;
}

/** A fragment with one straight edge across the ball, `offset` from its middle towards the hidden side. */
function fragmentAcross(ball: Ball, offset: number, towards: number, level: number): Fragment {
  const normal: Vector = [Math.cos(towards), Math.sin(towards)];
  const side: Vector = [-normal[1], normal[0]];
  const at = normal[0] * ball.x + normal[1] * ball.y;
  const beside = side[0] * ball.x + side[1] * ball.y;
  const { radius } = ball;
  return {
    sides: [
      { normal, offset: at + offset },
      { normal: [-normal[0], -normal[1]], offset: -(at + 1.35 * radius) },
      { normal: side, offset: beside - 1.25 * radius },
      { normal: [-side[0], -side[1]], offset: -(beside + 1.25 * radius) },
    ],
    level,
  };
}
