import { holdsForFilm, lensOfCalibration } from '../../app/lens';
import { formatNumber } from '../../core/format';
import type { LensCalibration } from '../../core/lens';
import { useDesk } from '../desk';
import { WarningBox } from '../shell/Notices';
import { LensFound } from './LensFound';
import { Fold, ToolButton } from './Panel';
import { WorkState } from './WorkState';

/** The lens from edges that are straight in the scene, marked on the frame shown. */
export function LensFromEdges() {
  const desk = useDesk();
  const { calibration, films, player } = desk.session;
  const { edges } = calibration;
  const film = films.film.value?.info;
  const frame = player.shown.value;
  const marked = edges.marked.value;
  if (film === undefined) return null;
  const draw = () => {
    const y = Math.round(film.height * (marked.length % 2 === 0 ? 0.12 : 0.88));
    const [left, right] = [Math.round(film.width * 0.1), Math.round(film.width * 0.9)];
    edges.add([
      [left, y],
      [right, y],
    ]);
    desk.mode.value = { kind: 'edge', index: marked.length };
  };
  const remove = (index: number) => {
    desk.putDown();
    edges.remove(index);
  };
  return (
    <Fold title="From a straight edge" opened={marked.length > 0}>
      <p class="muted">
        The barrel, a ruler, a table's edge: anything straight in the scene that runs near the top
        or bottom of the picture. Put both ends on it to within 4 pixels; the edge between them is
        found. Several edges tell more than one.
      </p>
      {marked.length > 0 && (
        <ul class="seeds">
          {marked.map((_, index) => (
            <li key={index} class="row">
              <span class="seed-place">Edge {index + 1}</span>
              <ToolButton mode={{ kind: 'edge', index }}>Move its ends</ToolButton>
              <button
                type="button"
                aria-label={`Remove edge ${index + 1}`}
                onClick={() => remove(index)}
              >
                Remove
              </button>
            </li>
          ))}
        </ul>
      )}
      <div class="row">
        <button type="button" onClick={draw}>
          Mark {marked.length === 0 ? 'an edge' : 'another edge'} on this frame
        </button>
        <button
          type="button"
          class={marked.length > 0 ? 'primary' : ''}
          disabled={marked.length === 0 || frame === null || edges.state.value.kind === 'running'}
          onClick={() => frame !== null && void edges.measure(frame)}
        >
          Find the lens
        </button>
      </div>
      <WorkState work={edges.state.value} doing="Following the edges" onCancel={edges.cancel}>
        {(found) => <EdgesFound found={found} edges={marked.length} />}
      </WorkState>
    </Fold>
  );
}

function EdgesFound(props: { readonly found: LensCalibration; readonly edges: number }) {
  const { found, edges } = props;
  const { films, shots } = useDesk().session;
  const distance = shots.draft.value?.scale.cameraDistance ?? null;
  const film = films.film.value?.info;
  const holds = film === undefined ? null : holdsForFilm(film, film);
  const each = found.parts.map(({ name, rms }) => `${name} ${formatNumber(rms, 2)}`).join(', ');
  return (
    <>
      <LensFound
        lens={lensOfCalibration(found)}
        origin={edges === 1 ? 'a straight edge' : `${edges} straight edges`}
        refused={holds === null || holds.ok ? null : holds.reason}
      >
        Freed of it, the edges are straight to {formatNumber(found.rms, 2)} px (rms
        {found.parts.length > 1 && `; ${each}`}).
      </LensFound>
      {distance === null && (
        <WarningBox
          reason={{
            code: 'focalNominal',
            message: 'An edge does not tell the focal length; it is taken for a usual one.',
            remedy: 'State the camera distance above as well.',
          }}
        />
      )}
    </>
  );
}
