import type { Reason } from '../core/reason';
import { median } from '../core/statistics';
import type { Pixels } from '../core/units';

/** A measured centre's variances, px^2. */
export interface KnownTo {
  readonly frame: number;
  readonly varX: number;
  readonly varY: number;
}

/**
 * A centre is too uncertain beside the others when its standard uncertainty, both directions together, is more than
 * this share of the radius and this many times the usual one. It weighs a quarter of theirs at most, and mist or a
 * shadow that makes it so uncertain also makes it err smoothly over several frames, which no path tells.
 */
const MOST_SHARE = 0.03;
const TIMES_USUAL = 2;
/** Beyond this share of the radius no centre is known well enough: in all frames something hides where the ball ends. */
const KNOWN_TO = 0.04;

/** Centres known much less well than those of the other frames, and those known too badly for any use. */
export function unsure(centres: readonly KnownTo[], radius: Pixels): Map<number, Reason> {
  const found = new Map<number, Reason>();
  if (centres.length === 0) return found;
  const spread = ({ varX, varY }: KnownTo) => Math.sqrt(varX + varY);
  const usual = median(centres.map(spread));
  const most = Math.min(KNOWN_TO * radius, Math.max(MOST_SHARE * radius, TIMES_USUAL * usual));
  for (const centre of centres) {
    const u = spread(centre);
    if (u <= most) continue;
    const hidden = usual > KNOWN_TO * radius;
    found.set(centre.frame, {
      code: 'tooUncertain',
      values: {
        form: hidden ? 'all' : 'some',
        frame: centre.frame,
        u: u.toFixed(2),
        usual: usual.toFixed(2),
      },
      message: hidden
        ? `In frame ${centre.frame} and most others the centre is known to ${u.toFixed(2)} px only: a reflection, a shadow or mist at the ball hides where it ends.`
        : `In frame ${centre.frame} the centre is known to ${u.toFixed(2)} px only; in half of the frames to ${usual.toFixed(2)} px.`,
    });
  }
  return found;
}
