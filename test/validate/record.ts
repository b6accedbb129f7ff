import { type Bound, centreBound } from './bound';
import { isMeasured, measureShot } from './measure';
import { type RenderedFrame, renderFilm, visibleShare, windowAround } from './render/film';
import type { Random } from './render/random';
import type { Shot } from './shot';

/** What one frame gave; along and across the flight, px. */
export interface FrameRecord {
  /** Why it was refused; null: it was measured, and errors and covariance count. */
  readonly refused: string | null;
  /** Measured centre minus true one. */
  readonly along: number;
  readonly across: number;
  /** The same error in the direction that draws a poor estimator: to the lamp, or to what hides the ball; null: none. */
  readonly pull: number | null;
  /** The stated covariance, px^2. */
  readonly varAlong: number;
  readonly varAcross: number;
  readonly cov: number;
  /** Least standard uncertainties. */
  readonly boundAlong: number;
  readonly boundAcross: number;
  /** True share of the disc that shows. */
  readonly visible: number;
  /** What hides it; 'nothing', or as the class has it. */
  readonly hiddenBy: string;
}

/** One shot: how it was drawn, and its frames. */
export interface ShotRecord {
  readonly radius: number;
  readonly contrastToNoise: number;
  readonly surface: 'even' | 'matt';
  /** Standard deviation of the noise at the level between ball and background, grey values. */
  readonly noise: number;
  /** Way during the exposure, radii. */
  readonly sweep: number;
  /** H.264 constant rate factor; null: not compressed. */
  readonly crf: number | null;
  readonly frames: readonly FrameRecord[];
}

export interface Recording {
  readonly random: Random;
  /** So many frames in full view, one after the other, share a bound. */
  readonly boundEvery: number;
  /** The film as it is measured; left out: as rendered. */
  readonly film?: (frames: readonly RenderedFrame[]) => Promise<readonly RenderedFrame[]>;
}

/** Renders a shot, measures it and sets the errors beside the bound. */
export async function recordShot(
  shot: Shot,
  { random, boundEvery, film }: Recording,
): Promise<readonly FrameRecord[]> {
  const rendered = renderFilm(shot, random);
  const { centres, prior } = measureShot(shot, film ? await film(rendered) : rendered, random);
  const bounds = new Map<string, ReturnType<typeof deviations>>();
  return shot.sightings.map((sighting, i): FrameRecord => {
    const { ball, fragment, hiddenBy, hiddenTowards } = sighting;
    const key = hiddenBy === 'nothing' ? `${Math.floor(i / boundEvery)}` : `${hiddenBy} ${i}`;
    let bound = bounds.get(key);
    if (bound === undefined) {
      const scene = { backdrop: shot.backdrop, softness: shot.softness, ball, fragment };
      const window = windowAround(scene, ball, shot);
      const least = centreBound(scene, window, shot.camera, prior, shot.sightings.length);
      bound = deviations(turned(least, shot.axis));
      bounds.set(key, bound);
    }
    const common = {
      boundAlong: bound.along,
      boundAcross: bound.across,
      visible: visibleShare(ball, shot.backdrop, fragment, shot),
      hiddenBy,
    };
    const centre = centres[i];
    if (centre === undefined) throw new Error(`Frame ${i} of the shot was not measured.`);
    if (!isMeasured(centre)) {
      const none = { along: 0, across: 0, pull: null, varAlong: 0, varAcross: 0, cov: 0 };
      return { refused: centre.code, ...none, ...common };
    }
    const dx = centre.x - ball.x;
    const dy = centre.y - ball.y;
    const [ax, ay] = shot.axis;
    const stated = turned({ xx: centre.varX, xy: centre.covXY, yy: centre.varY }, shot.axis);
    const towards = hiddenTowards ?? ball.light?.azimuth ?? null;
    return {
      refused: null,
      along: ax * dx + ay * dy,
      across: ax * dy - ay * dx,
      pull: towards === null ? null : Math.cos(towards) * dx + Math.sin(towards) * dy,
      varAlong: stated.along,
      varAcross: stated.across,
      cov: stated.cov,
      ...common,
    };
  });
}

/** A covariance in the image's axes, along and across the flight. */
function turned(
  { xx, xy, yy }: Pick<Bound, 'xx' | 'xy' | 'yy'>,
  [ax, ay]: readonly [number, number],
): { along: number; across: number; cov: number } {
  return {
    along: ax * ax * xx + 2 * ax * ay * xy + ay * ay * yy,
    across: ay * ay * xx - 2 * ax * ay * xy + ax * ax * yy,
    cov: (ax * ax - ay * ay) * xy + ax * ay * (yy - xx),
  };
}

const deviations = ({ along, across }: { along: number; across: number }) => ({
  along: Math.sqrt(along),
  across: Math.sqrt(across),
});
