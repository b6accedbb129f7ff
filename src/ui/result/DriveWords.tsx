import type { Reduction } from '../../app/resultTypes';
import { formatNumber } from '../../core/format';

/** What the outside air could do at most: a rule of thumb beside the result. */
export function DriveWords({ drive }: { readonly drive: Reduction['drive'] }) {
  const { force, acceleration, gravities } = drive;
  return (
    <p data-role="drive">
      For comparison: in a perfect vacuum the air outside would push with about{' '}
      {formatNumber(force, 3)} N: {formatNumber(acceleration, 3)} m/s² at first,{' '}
      {formatNumber(gravities, 3)} g. The air column behind the ball must be accelerated too.
    </p>
  );
}
