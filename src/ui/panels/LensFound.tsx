import type { ComponentChildren } from 'preact';
import { setScale } from '../../app/edits';
import { cornerReach, type Lens } from '../../app/lens';
import type { Reason } from '../../core/reason';
import { showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { reachWords } from './lensWords';

/** A lens as found, in words, and a button that states it. */
export function LensFound(props: {
  readonly lens: Lens;
  /** What it was found by. */
  origin(): string;
  /** Why it cannot be used for this film; null: it can. */
  readonly refused: Reason | null;
  readonly children: ComponentChildren;
}) {
  const { lens, origin, refused, children } = props;
  const { shots, films, calibration } = useDesk().session;
  const film = films.film.value?.info;
  const stated = shots.draft.value?.scale.lens ?? null;
  const inUse = stated !== null && JSON.stringify(stated) === JSON.stringify(lens);
  const reach = film === undefined || refused !== null ? null : cornerReach(lens, film);
  const use = () => {
    calibration.origin.value = { lens, words: origin };
    shots.edit(setScale({ lens }), { label: t('edits.lens') });
  };
  return (
    <div class={`notice notice-${refused === null ? 'information' : 'problem'}`} role="status">
      <p>
        {t('panels.lens.values', {
          k1: showQuantity(lens.k1, 'count', ''),
          k2: showQuantity(lens.k2, 'count', ''),
        })}{' '}
        {children}
      </p>
      {reach?.ok && <p>{t('panels.lens.correction', { reach: reachWords(reach.value) })}</p>}
      {reach !== null && !reach.ok && <ReasonText reason={reach.reason} />}
      {refused !== null && <ReasonText reason={refused} />}
      {refused === null && (
        <div class="row">
          <button type="button" disabled={inUse} onClick={use}>
            {t(inUse ? 'panels.inUse' : 'panels.lens.use')}
          </button>
        </div>
      )}
    </div>
  );
}
