import { setScale } from '../../app/edits';
import { cornerReach, type Lens } from '../../app/lens';
import { formatNumber, formatQuantity } from '../../core/format';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { GridToggle } from './GridToggle';
import { LensFromBoards } from './LensFromBoards';
import { LensFromEdges } from './LensFromEdges';
import { LensValues } from './LensValues';
import { reachWords } from './lensWords';
import { Facts, Fold } from './Panel';

/** The lens's distortion: what is stated, and ways to find it. */
export function LensSection() {
  const { shots, calibration } = useDesk().session;
  const { boards, edges } = calibration;
  const lens = shots.draft.value?.scale.lens ?? null;
  // What is under way is not folded out of sight by a look at another step.
  const busy = boards.state.value.kind !== 'idle' || edges.marked.value.length > 0;
  return (
    <Fold title={`Lens: ${lens === null ? 'no distortion stated' : 'corrected'}`} opened={busy}>
      <p class="muted">
        A lens bends straight lines, most towards the corners, so that the scale changes across the
        picture. Needed where a straight edge near the border is seen to bow, as with most
        wide-angle lenses and phones.
      </p>
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
          ['k1', formatQuantity(k1, 'count', '')],
          ['k2', formatQuantity(k2, 'count', '')],
          ['Focal length', formatQuantity(focal, 'pixels', 'px')],
          [
            'Centre',
            `x ${formatNumber(centre[0], 5)}, y ${formatNumber(centre[1], 5)} px, ± ${formatNumber(lens.centreU, 2)}`,
          ],
          ['Found by', known ? origin.words : 'values in the shot file or typed'],
          [
            'Moves a corner of the picture',
            reach === null || !reach.ok ? 'not to be told' : reachWords(reach.value),
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
          onClick={() => shots.edit(setScale({ lens: null }), { label: 'lens removed' })}
        >
          Remove the lens
        </button>
      </div>
    </>
  );
}
