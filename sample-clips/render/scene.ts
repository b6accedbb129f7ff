import { place, type StaticScene, SUB } from './canvas';
import { imageX, imageY, type MuzzleFrame, onFlightPlane, type Projection } from './projection';
import type { Random } from './random';
import { relief } from './texture';

/** What stands still: dark wall, bench, launcher end with its clamp ring, scale bar. */
export interface Setting {
  readonly width: number;
  readonly height: number;
  readonly projection: Projection;
  readonly muzzle: MuzzleFrame;
  readonly boreRadius: number;
  readonly tubeRadius: number;
  readonly ringRadius: number;
  readonly ringLength: number;
  readonly clearTube: boolean;
  readonly bar: {
    /** World place of the bar's middle mark line, and its depth. */
    readonly centre: readonly [number, number];
    readonly depth: number;
    /** Distance of the two marks, m. */
    readonly length: number;
  };
}

const BAR_HEIGHT = 0.009;
const BAR_OVERHANG = 0.012;
const MARK_WIDTH = 0.00045;
const CLEAR = { through: 0.62, added: 0.035 };

/** Uneven light: brighter to the upper left, falling off to the corners. */
export function light(width: number, height: number, x: number, y: number): number {
  const u = x / width - 0.42;
  const v = y / height - 0.35;
  return 1.06 - 0.55 * u * u - 0.3 * v * v - 0.1 * u;
}

/** Image places of the scale bar's two marks, at the bar's upper edge. */
export function barMarks(setting: Setting): [[number, number], [number, number]] {
  const { projection, bar } = setting;
  const at = (side: number): [number, number] => [
    imageX(projection, bar.centre[0] + (side * bar.length) / 2, bar.depth),
    imageY(projection, bar.centre[1], bar.depth),
  ];
  return [at(-1), at(1)];
}

export function staticScene(setting: Setting, random: Random): StaticScene {
  const { width, height } = setting;
  const columns = width * SUB;
  const radiance = new Float32Array(columns * height * SUB);
  const through = new Float32Array(radiance.length).fill(1);
  const added = new Float32Array(radiance.length);
  const wall = relief(width, height, [41, 13, 4], random);
  const grain = relief(width, height * 4, [9], random);
  for (let r = 0; r < height * SUB; r++) {
    const y = place(r);
    const py = Math.floor(r / SUB);
    for (let i = 0; i < columns; i++) {
      const x = place(i);
      const px = Math.floor(i / SUB);
      const at = r * columns + i;
      const lit = light(width, height, x, y);
      const texture = wall[py * width + px] as number;
      const front = launcherFront(setting, x, y);
      const back =
        launcherBack(setting, x, y) ??
        scaleBar(setting, x, y, grain[4 * py * width + px] as number) ??
        stand(setting, x, y) ??
        0.125 + 0.012 * texture;
      through[at] = front.through;
      added[at] = front.added * lit * (1 + 0.04 * texture);
      radiance[at] = back * lit * front.through + (added[at] as number);
    }
  }
  return { width, height, radiance, through, added };
}

/** Place along the axis (s) and below it (q) of the line of sight where it crosses depth z. */
function alongSight(setting: Setting, x: number, y: number, z: number): [number, number] {
  const { projection, muzzle } = setting;
  const [wx0, wy0] = onFlightPlane(projection, x, y);
  const f = (projection.distance + z) / projection.distance;
  const wx = wx0 * f - muzzle.origin[0];
  const wy = wy0 * f - muzzle.origin[1];
  const [ax, ay] = muzzle.axis;
  return [wx * ax + wy * ay, (wy * ax - wx * ay) * Math.sign(ax)];
}

function nearDepth(radius: number, q: number): number {
  return -Math.sqrt(Math.max(0, radius * radius - q * q));
}

/** The near half of ring and tube: what hides, or dims, the ball in the bore. */
function launcherFront(setting: Setting, x: number, y: number): { through: number; added: number } {
  const [s0, q0] = alongSight(setting, x, y, 0);
  if (Math.abs(q0) > setting.ringRadius * 1.05 || s0 > 0.01) return { through: 1, added: 0 };
  // The ring's outer rim counts where the sight meets the ring outside the bore, the bore's where inside.
  const rim = Math.abs(q0) < setting.boreRadius ? setting.boreRadius : setting.ringRadius;
  const [s, q] = alongSight(setting, x, y, nearDepth(rim, q0));
  if (s > 0) return { through: 1, added: 0 };
  const [sOuter] = alongSight(setting, x, y, nearDepth(setting.ringRadius, q0));
  if (sOuter > -setting.ringLength) {
    if (Math.abs(q) > setting.ringRadius) return { through: 1, added: 0 };
    if (sOuter > 0) return { through: 0, added: ringFace() };
    return { through: 0, added: ringSide(setting, sOuter, q) };
  }
  const across = q / setting.tubeRadius;
  if (Math.abs(across) > 1) return { through: 1, added: 0 };
  const sheen = Math.exp(-(((across + 0.55) / 0.12) ** 2));
  if (!setting.clearTube)
    return { through: 0, added: 0.07 + 0.1 * cylinder(across) + 0.07 * sheen };
  // Seen edge-on the wall is thick and bright; between, it dims and adds a little glare.
  const wall = Math.abs(q) > setting.boreRadius;
  return {
    through: wall ? 0.25 : CLEAR.through,
    added: (wall ? 0.16 : CLEAR.added) + 0.1 * sheen,
  };
}

/** Behind the ball: the far part of the ring's face, the bore's mouth, the inside of a clear tube. */
function launcherBack(setting: Setting, x: number, y: number): number | null {
  const [s0, q0] = alongSight(setting, x, y, 0);
  if (Math.abs(q0) > setting.ringRadius || s0 > 0.01) return null;
  const [sNear] = alongSight(setting, x, y, nearDepth(setting.ringRadius, q0));
  if (sNear < -setting.ringLength) {
    // Beyond the ring: the clear tube's far side, or what is behind the launcher.
    return setting.clearTube && Math.abs(q0) < setting.tubeRadius ? 0.115 : null;
  }
  const [sFar] = alongSight(setting, x, y, -nearDepth(setting.ringRadius, q0));
  if (sFar > 0) return null;
  const [sMouth] = alongSight(setting, x, y, -nearDepth(setting.boreRadius, q0));
  if (Math.abs(q0) > setting.boreRadius || sMouth > 0) return ringFace();
  return 0.05;
}

function ringFace(): number {
  return 0.34;
}

function ringSide(setting: Setting, s: number, q: number): number {
  const across = q / setting.ringRadius;
  const groove = Math.abs(s + setting.ringLength * 0.45) < 0.0006 ? 0.45 : 1;
  const bolt = Math.hypot(s + setting.ringLength * 0.72, q - 0.3 * setting.ringRadius) < 0.0022;
  const highlight = 0.22 * Math.exp(-(((across + 0.5) / 0.16) ** 2));
  return (0.1 + 0.2 * cylinder(across) + highlight) * groove * (bolt ? 0.35 : 1);
}

/** Brightness over a cylinder lit from above, -1 (top) .. 1. */
function cylinder(across: number): number {
  return Math.max(0, Math.sqrt(Math.max(0, 1 - across * across)) * 0.6 - across * 0.6);
}

/** The post under the clamp ring. */
function stand(setting: Setting, x: number, y: number): number | null {
  const [s, q] = alongSight(setting, x, y, 0.01);
  const inside = q > 0 && s < -0.2 * setting.ringLength && s > -0.8 * setting.ringLength;
  return inside ? 0.07 : null;
}

/** Brushed steel bar with its two engraved marks, and the dark ledge it lies on. */
function scaleBar(setting: Setting, x: number, y: number, grain: number): number | null {
  const { projection, bar } = setting;
  const [wx0, wy0] = onFlightPlane(projection, x, y);
  const f = (projection.distance + bar.depth) / projection.distance;
  const wx = wx0 * f - bar.centre[0];
  const down = wy0 * f - bar.centre[1];
  if (down < 0) return null;
  const reach = bar.length / 2 + BAR_OVERHANG;
  if (down > BAR_HEIGHT) return down < BAR_HEIGHT + 0.002 ? 0.05 : 0.09;
  if (Math.abs(wx) > reach) return null;
  const engraved = Math.abs(Math.abs(wx) - bar.length / 2) < MARK_WIDTH / 2;
  if (engraved && down < 0.7 * BAR_HEIGHT) return 0.1;
  const bevel = down < 0.0007 ? 0.14 : 0;
  return 0.42 + bevel + 0.03 * grain - 0.08 * (down / BAR_HEIGHT);
}
