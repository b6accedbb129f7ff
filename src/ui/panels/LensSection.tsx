import { setScale } from '../../app/edits';
import { cornerReach, type Lens } from '../../app/lens';
import { showNumber, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { Facts } from './Facts';
import { GridToggle } from './GridToggle';
import { LensFromBoards } from './LensFromBoards';
import { LensFromEdges } from './LensFromEdges';
import { LensValues } from './LensValues';
import { reachWords } from './lensWords';
import { Fold } from './Panel';

/** The lens's distortion: what is stated, and ways to find it. */
export function LensSection() {
  const { shots, calibration } = useDesk().session;
  const { boards, edges } = calibration;
  const lens = shots.draft.value?.scale.lens ?? null;
  // What is under way is not folded out of sight by a look at another step.
  const busy = boards.state.value.kind !== 'idle' || edges.marked.value.length > 0;
  return (
    <Fold title={t('panels.lens.title', { stated: lens === null ? 'no' : 'yes' })} opened={busy}>
      <p class="muted">{t('panels.lens.why')}</p>
      {lens !== null && <Stated lens={lens} />}
      <LensFromBoards />
      <LensFromEdges />
      <LensValues lens={lens} />
    </Fold>
  );
}

function Stated({ lens }: { readonly lens: Lens }) {
  const { shots, films, calibration } = useDesk().session;
  const film = films.film.value?.info;
  const origin = calibration.origin.value;
  const known = origin !== null && JSON.stringify(origin.lens) === JSON.stringify(lens);
  const reach = film === undefined ? null : cornerReach(lens, film);
  const { k1, k2, focal, centre } = lens;
  return (
    <>
      <Facts
        facts={[
          ['k1', showQuantity(k1, 'count', '')],
          ['k2', showQuantity(k2, 'count', '')],
          [t('panels.lens.focal'), showQuantity(focal, 'pixels', 'px')],
          [
            t('panels.lens.centre'),
            t('panels.lens.centreIs', {
              x: showNumber(centre[0], 5),
              y: showNumber(centre[1], 5),
              u: showNumber(lens.centreU, 2),
            }),
          ],
          [t('panels.lens.foundBy'), known ? origin.words() : t('panels.lens.typed')],
          [
            t('panels.lens.moves'),
            reach === null || !reach.ok ? t('panels.lens.notTold') : reachWords(reach.value),
          ],
        ]}
      />
      {reach !== null && !reach.ok && (
        <div class="notice notice-problem" data-code={reach.reason.code}>
          <ReasonText reason={reach.reason} />
        </div>
      )}
      <GridToggle />
      <div class="row">
        <button
          type="button"
          onClick={() => shots.edit(setScale({ lens: null }), { label: t('edits.lensRemoved') })}
        >
          {t('panels.lens.remove')}
        </button>
      </div>
    </>
  );
}
