import type { Quantity } from '../../core/estimate';
import { formatQuantity } from '../../core/format';
import { useDesk } from '../desk';

/** What the last edit did to the exit velocity: '176.80 → 176.84 m/s'. */
export function VelocityChangeWords() {
  const desk = useDesk();
  const unit = desk.preferences.speedUnit.value;
  const change = desk.session.velocityChange.value;
  return (
    <p class="velocity-change" role="status">
      {change !== null && (
        <>
          Exit velocity <strong>{words(change, unit)}</strong>
          <span class="muted"> after: {change.label}</span>
        </>
      )}
    </p>
  );
}

/** A change smaller than this share of the uncertainty is not worth more figures. */
const FINEST = 100;

type Change = NonNullable<ReturnType<typeof useDesk>['session']['velocityChange']['value']>;

function words({ before, after }: Change, unit: string): string {
  const u = after?.u ?? before?.u ?? 0;
  const shift = before && after ? after.value - before.value : 0;
  // To the place the uncertainty sets, or to the one where the change shows.
  const placeU = shift === 0 ? u : Math.min(u, Math.max(10 * Math.abs(shift), u / FINEST));
  const stated = ({ value }: Quantity) =>
    formatQuantity({ value, u: placeU }, 'speed', unit, false);
  const bare = (quantity: Quantity) => stated(quantity).replace(` ${unit}`, '');
  if (after === undefined) return `${before === null ? 'none' : bare(before)} → …`;
  if (before === null) return after === null ? 'none, as before' : `none → ${stated(after)}`;
  if (after === null) return `${stated(before)} → none`;
  if (shift === 0) return `${stated(after)}, unchanged`;
  const share = u > 0 ? `, ${shift < 0 ? '−' : '+'}${Math.abs(shift / u).toFixed(2)} u` : '';
  return `${bare(before)} → ${stated(after)}${share}`;
}
