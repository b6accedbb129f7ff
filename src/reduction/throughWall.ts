import { type Outcome, success } from '../core/reason';
import type { FlightPoint, SharedInputs } from '../exit/types';
import type { Layout } from './layOut';
import type { Scene } from './scene';
import type { ReductionInputs } from './types';

/**
 * Thickness of a clear tube's wall that is reckoned with, as a standard uncertainty about none, m (common practice, no
 * source), and the share of it by which a plate of refractive index 1.5 sets aside what is seen at a slant: 1 - 1/n.
 */
const WALL = 0.003;
const SET_ASIDE = 1 / 3;

/**
 * The centres with what looking through the wall of a clear tube may do to those behind the muzzle plane: each is set
 * towards the point the camera looks at squarely by wall * (1 - 1/n) * slant. Without a stated camera distance a slant
 * as of a view 53 degrees wide is reckoned with, more than most lenses show.
 */
export function throughWall(
  { shot, info }: ReductionInputs,
  scene: Scene,
  { points, line, metresPerPixel }: Pick<Layout, 'points' | 'line' | 'metresPerPixel'>,
  shared: SharedInputs,
): { readonly points: Outcome<readonly FlightPoint[]>; readonly shared: SharedInputs } {
  if (!points.ok) return { points, shared };
  const middle = scene.scale.view.flatten([(info.width - 1) / 2, (info.height - 1) / 2]);
  if (!middle.ok) return { points: middle, shared };
  const squarely = line.along(...middle.value);
  const distance = shot.scale.cameraDistance?.value ?? info.width * metresPerPixel;
  const none = (shared.shiftSources ?? []).map(() => 0);
  const shifted = points.value.map((point) => {
    const slant = ((point.along - squarely) * metresPerPixel) / distance;
    const aside = point.along < 0 ? (WALL * SET_ASIDE * slant) / metresPerPixel : 0;
    return { ...point, shifts: [...(point.shifts ?? none), aside] };
  });
  const wall = { source: 'refraction in the wall of the tube', u: 1, unit: '1' };
  return {
    points: success(shifted),
    shared: { ...shared, shiftSources: [...(shared.shiftSources ?? []), wall] },
  };
}
