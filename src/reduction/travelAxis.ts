import type { ImageVector } from '../core/units';
import { unitVector } from '../core/vector';
import { flatDirection } from '../geometry/view';
import type { Warning } from '../shot/result';
import { axisOfPath, type Sighting } from './positions';
import type { Scene } from './scene';

/** A stated axis farther than this from the path is worth a word: 2 degrees. */
const AXIS_DISAGREEMENT = (2 * Math.PI) / 180;

export interface Travel {
  /** Unit vector on the flight plane. */
  readonly axis: ImageVector;
  /** Cosine of the angle between the axis and the path: distances along the axis are divided by it. */
  readonly cosine: number;
  /** Relative standard uncertainty of distances along the path because of its direction's own. */
  readonly cosineU: number;
  readonly warnings: readonly Warning[];
}

/** The flight axis: the one stated, corrected for the angle to the path, or the path's own direction. */
export function travelAxis(scene: Scene, kept: readonly Sighting[]): Travel {
  const path = axisOfPath(kept);
  const axis = unitVector(flatDirection(scene.atMuzzle, scene.axis));
  if (!path.ok) return { axis, cosine: 1, cosineU: 0, warnings: [] };
  const { angleU } = path.value;
  const along = { axis: path.value.axis, cosine: 1, cosineU: cosineU(0, angleU) };
  if (scene.muzzle.axis === null) return { ...along, warnings: [] };
  const cosine = Math.min(1, axis[0] * path.value.axis[0] + axis[1] * path.value.axis[1]);
  const angle = Math.acos(Math.max(-1, cosine));
  if (angle > Math.PI / 3) {
    return {
      ...along,
      warnings: [
        {
          code: 'axisOpposed',
          message: 'The stated direction of travel does not fit the path; the path is used.',
          remedy: 'Turn the direction arrow on the frame along the flight.',
        },
      ],
    };
  }
  const degrees = ((angle * 180) / Math.PI).toFixed(1);
  const warnings: Warning[] =
    angle > AXIS_DISAGREEMENT + 3 * angleU
      ? [
          {
            code: 'axisDisagrees',
            message: `The stated direction is ${degrees} degrees off the path; distances are corrected for it.`,
            values: { degrees },
            remedy: 'Let the direction be found from the path, or draw it along the flight.',
          },
        ]
      : [];
  return { axis, cosine, cosineU: cosineU(angle, angleU), warnings };
}

/** Relative effect of an angle's uncertainty on its cosine, the second order counted (JCGM 100:2008, F.2.4.4). */
const cosineU = (angle: number, angleU: number): number =>
  Math.hypot(Math.tan(angle) * angleU, angleU ** 2 / Math.SQRT2);
