import { sheetShade } from './ball';
import {
  bulgeHeight,
  capHeight,
  type Flap,
  flaps,
  holeRadius,
  type Ragged,
  raggedEdge,
  type SealLaw,
} from './film';
import { type Fragment, type FragmentPlan, fragments } from './fragments';
import { imageX, imageY, type MuzzleFrame, type Projection, toWorld } from './projection';
import type { Random } from './random';

/** A flat-coloured polygon in the image. */
export interface Sheet {
  readonly points: number[];
  readonly radiance: number;
  readonly opacity: number;
}

/** Brightness of parchment facing the light, as a share of full scale. */
const PARCHMENT = 0.66;
/** Points an outline is drawn with. */
const OUTLINE = 48;

/** The parchment seal over its whole life, ready to be drawn at any instant. */
export class Seal {
  readonly pieces: readonly Fragment[];
  private readonly edges: readonly [Ragged, Ragged];
  private readonly hanging: readonly Flap[];
  private readonly law: SealLaw;

  constructor(
    plan: FragmentPlan,
    private readonly projection: Projection,
    private readonly frame: MuzzleFrame,
    random: Random,
  ) {
    this.law = plan.law;
    this.edges = [raggedEdge(plan.law, random), raggedEdge(plan.law, random)];
    this.hanging = flaps(plan.law, 6, random);
    this.pieces = fragments(plan, random);
  }

  /** What lies behind the ball and what before it, farthest first, at time t. */
  sheets(t: number): { readonly behind: Sheet[]; readonly before: Sheet[] } {
    if (t <= this.law.burst) return { behind: [], before: [this.collar(t, -1)] };
    const behind: Sheet[] = [];
    const before: Sheet[] = [];
    behind.push(this.collar(t, 1));
    for (const flap of this.hanging) {
      (Math.cos(flap.azimuth) > 0 ? behind : before).push(this.flap(flap, t));
    }
    before.push(this.collar(t, -1));
    const flying = this.pieces.filter((piece) => t >= piece.release);
    const byDepth = flying
      .map((piece) => ({ piece, z: piece.middle(t)[2] }))
      .sort((a, b) => b.z - a.z);
    for (const { piece, z } of byDepth) (z > 0 ? behind : before).push(this.fragment(piece, t));
    return { behind, before };
  }

  /** Fastest speed of any piece at time t, m/s. */
  fastest(t: number): number {
    let most = 0;
    for (const piece of this.pieces) {
      if (t >= piece.release) most = Math.max(most, piece.speed(t));
    }
    return most;
  }

  /**
   * The film on the ring: whole, a bulge from its near rim to its outline; torn, the collar of the
   * near (side -1) or far (+1) half.
   */
  private collar(t: number, side: -1 | 1): Sheet {
    const { law } = this;
    const whole = t <= law.burst;
    const middle = bulgeHeight(law, t);
    const hole = holeRadius(law, t);
    const ragged = side < 0 ? this.edges[0] : this.edges[1];
    const points: number[] = [];
    const add = (s: number, q: number, z: number): void => this.addPoint(points, s, q, z);
    for (let k = 0; k <= OUTLINE; k++) {
      const q = law.radius * Math.sin(Math.PI * (k / OUTLINE - 0.5));
      add(0, q, side * Math.sqrt(Math.max(0, law.radius ** 2 - q * q)));
    }
    for (let k = OUTLINE; k >= 0; k--) {
      const q = law.radius * Math.sin(Math.PI * (k / OUTLINE - 0.5));
      const depth = Math.sqrt(Math.max(0, law.radius ** 2 - q * q));
      const out = capHeight(law, middle, Math.max(Math.abs(q), hole)) + ragged(q, t);
      if (!whole) {
        // The hole's edge stands nearer the axis than the rim.
        add(out, q, side * Math.sqrt(Math.max(0, Math.max(hole * hole, q * q) - q * q)));
      } else {
        this.addFarther(points, out, q, depth);
      }
    }
    const tilt = Math.min(0.2, middle / law.radius / 4);
    return { points, radiance: PARCHMENT * (0.7 + tilt), opacity: 0.95 };
  }

  /** Of the bulge's outline and the far rim, whichever is seen farther out. */
  private addFarther(points: number[], out: number, q: number, depth: number): void {
    const profile: number[] = [];
    this.addPoint(profile, out, q, 0);
    this.addPoint(profile, 0, q, depth);
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = profile;
    const [ax, ay] = this.frame.axis;
    if ((x1 - x0) * ax + (y1 - y0) * ay > 0) points.push(x1, y1);
    else points.push(x0, y0);
  }

  private flap(flap: Flap, t: number): Sheet {
    const { radius } = this.law;
    const angle = flap.angle(t);
    const points: number[] = [];
    const place = (azimuth: number, along: number): void => {
      const r = radius + along * Math.sin(angle);
      const s = along * Math.cos(angle);
      this.addPoint(points, s, r * Math.sin(azimuth), r * Math.cos(azimuth));
    };
    const { azimuth, halfWidth, length } = flap;
    place(azimuth - halfWidth, 0);
    place(azimuth - 0.7 * halfWidth, 0.55 * length);
    place(azimuth - 0.1 * halfWidth, length);
    place(azimuth + 0.5 * halfWidth, 0.7 * length);
    place(azimuth + halfWidth, 0);
    const normal = [
      Math.sin(angle),
      -Math.cos(angle) * Math.sin(azimuth),
      -Math.cos(angle) * Math.cos(azimuth),
    ] as const;
    return { points, radiance: PARCHMENT * sheetShade(normal), opacity: 0.95 };
  }

  private fragment(piece: Fragment, t: number): Sheet {
    const [s, q, z] = piece.middle(t);
    const { corners, normal } = piece.attitude(t);
    const points: number[] = [];
    for (const [ds, dq, dz] of corners) this.addPoint(points, s + ds, q + dq, z + dz);
    return { points, radiance: PARCHMENT * piece.tone * sheetShade(normal), opacity: 0.93 };
  }

  private addPoint(points: number[], s: number, q: number, z: number): void {
    const [x, y, depth] = toWorld(this.frame, s, q, z);
    points.push(imageX(this.projection, x, depth), imageY(this.projection, y, depth));
  }
}
