import type { Quantity } from '../../core/estimate';
import { showFixed, showQuantity } from '../../text/show';
import { t, tRich } from '../../text/text';
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
          {tRich('frames.velocity.change', { change: words(change, unit) })}
          <span class="muted"> {t('frames.velocity.after', { what: change.label })}</span>
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
  const stated = ({ value }: Quantity) => showQuantity({ value, u: placeU }, 'speed', unit, false);
  const bare = (quantity: Quantity) => stated(quantity).replace(` ${unit}`, '');
  const none = t('frames.velocity.none');
  const to = (first: string, second: string) =>
    t('frames.velocity.to', { before: first, after: second });
  if (after === undefined) return to(before === null ? none : bare(before), '…');
  if (before === null) {
    return after === null ? t('frames.velocity.stillNone') : to(none, stated(after));
  }
  if (after === null) return to(stated(before), none);
  if (shift === 0) return t('frames.velocity.unchanged', { speed: stated(after) });
  if (u <= 0) return to(bare(before), stated(after));
  return t('frames.velocity.toBy', {
    before: bare(before),
    after: stated(after),
    share: `${shift < 0 ? '−' : '+'}${showFixed(Math.abs(shift / u), 2)}`,
  });
}
