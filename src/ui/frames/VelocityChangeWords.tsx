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

type Change = NonNullable<ReturnType<typeof useDesk>['session']['velocityChange']['value']>;

function words({ before, after }: Change, unit: string): string {
  const u = after?.u ?? before?.u ?? 0;
  const stated = (value: number) => formatQuantity({ value, u }, 'speed', unit, false);
  const bare = (value: number) => stated(value).replace(` ${unit}`, '');
  if (after === undefined) return `${before === null ? 'none' : bare(before.value)} → …`;
  if (before === null) return after === null ? 'none, as before' : `none → ${stated(after.value)}`;
  if (after === null) return `${stated(before.value)} → none`;
  const shift = after.value - before.value;
  if (shift === 0) return `${stated(after.value)}, unchanged`;
  const share = u > 0 ? `, ${shift < 0 ? '−' : '+'}${Math.abs(shift / u).toFixed(2)} u` : '';
  return `${bare(before.value)} → ${stated(after.value)}${share}`;
}
