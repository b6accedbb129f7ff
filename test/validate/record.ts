import { type Bound, centreBound } from './bound';
import { isMeasured, measureShot } from './measure';
import { type RenderedFrame, renderFilm, visibleShare, windowAround } from './render/film';
import type { Random } from './render/random';
import type { Shot } from './shot';

/** What one frame gave; along and across the flight. */
export interface FrameRecord {
  /** Why it was refused; null: it was measured. */
  readonly refused: string | null;
  /** Measured centre minus true one, px. 0 where refused. */
  readonly along: number;
  readonly across: number;
  /** The stated covariance, px^2. */
  readonly varAlong: number;
  readonly varAcross: number;
  readonly cov: number;
  /** Least standard uncertainties, px: the look of a matt ball's light known, and not. */
  readonly bound: readonly [along: number, across: number];
  readonly boundUnlit: readonly [along: number, across: number];
  /** True share of the disc that shows. */
  readonly visible: number;
  /** What hides it: 'none', or as the class has it. */
  readonly hiddenBy: string;
}

/** One shot and what it was drawn with. */
export interface ShotRecord {
  /** The cell of the class it belongs to. */
  readonly cell: string;
  readonly radius: number;
  readonly contrastToNoise: number;
  readonly surface: 'even' | 'matt';
  /** Standard deviation of the noise between ball and background, grey values. */
  readonly noise: number;
  readonly frames: readonly FrameRecord[];
}

/** Every so many frames of a shot have a bound of their own; those between share it. */
interface Recording {
  readonly random: Random;
  readonly boundEvery: number;
  /** The film as it is measured; left out: as rendered. */
  readonly film?: (frames: RenderedFrame[]) => Promise<readonly RenderedFrame[]>;
  /** What hides the ball of a sighting. */
  readonly hiddenBy?: readonly string[];
}

/** Renders a shot, measures it and sets the errors beside the bound. */
export async function recordShot(
  shot: Shot,
  recording: Recording,
): Promise<readonly FrameRecord[]> {
  const { random, film, boundEvery, hiddenBy } = recording;
  const rendered = renderFilm(shot, random);
  const frames = film ? await film(rendered) : rendered;
  const { centres, prior } = measureShot(shot, frames, random);
  const [ax, ay] = shot.axis;
  const turn = (xx: number, xy: number, yy: number) => ({
    along: ax * ax * xx + 2 * ax * ay * xy + ay * ay * yy,
    across: ay * ay * xx - 2 * ax * ay * xy + ax * ax * yy,
    cov: (ax * ax - ay * ay) * xy + ax * ay * (yy - xx),
  });
  const sides = ({ xx, xy, yy }: Bound): readonly [number, number] => {
    const turned = turn(xx, xy, yy);
    return [Math.sqrt(turned.along), Math.sqrt(turned.across)];
  };
  const boundOf = (i: number, light: boolean) => {
    const sighting = shot.sightings[i];
    if (sighting === undefined) throw new Error('No such sighting.');
    const window = windowAround(sighting.ball, shot.softness, shot);
    const scene = { backdrop: shot.backdrop, softness: shot.softness, ...sighting };
    return sides(centreBound(scene, window, shot.camera, prior, light));
  };
  let bound: readonly [number, number] = [0, 0];
  let boundUnlit = bound;
  return centres.map((centre, i): FrameRecord => {
    const { ball, fragment } = shot.sightings[i] as Shot['sightings'][number];
    if (i % boundEvery === 0) {
      bound = boundOf(i, false);
      boundUnlit = ball.light ? boundOf(i, true) : bound;
    }
    const common = {
      bound,
      boundUnlit,
      visible: visibleShare(ball, shot.backdrop, fragment, shot),
      hiddenBy: hiddenBy?.[i] ?? 'none',
    };
    if (!isMeasured(centre)) {
      const nothing = { along: 0, across: 0, varAlong: 0, varAcross: 0, cov: 0 };
      return { refused: centre.code, ...nothing, ...common };
    }
    const dx = centre.x - ball.x;
    const dy = centre.y - ball.y;
    const stated = turn(centre.varX, centre.covXY, centre.varY);
    return {
      refused: null,
      along: ax * dx + ay * dy,
      across: ax * dy - ay * dx,
      varAlong: stated.along,
      varAcross: stated.across,
      cov: stated.cov,
      ...common,
    };
  });
}
