import { holdsForFilm, lensOfCalibration } from '../../app/lens';
import type { LensCalibration } from '../../core/lens';
import { showList, showNumber } from '../../text/show';
import { t } from '../../text/text';
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
    <Fold title={t('panels.lens.edges.title')} opened={marked.length > 0}>
      <p class="muted">{t('panels.lens.edges.how')}</p>
      {marked.length > 0 && (
        <ul class="seeds">
          {marked.map((_, index) => (
            <li key={index} class="row">
              <span class="seed-place">{t('panels.lens.edges.edge', { number: index + 1 })}</span>
              <ToolButton mode={{ kind: 'edge', index }}>{t('panels.moveEnds')}</ToolButton>
              <button
                type="button"
                aria-label={t('panels.lens.edges.remove', { number: index + 1 })}
                onClick={() => remove(index)}
              >
                {t('panels.remove')}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div class="row">
        <button type="button" onClick={draw}>
          {t(marked.length === 0 ? 'panels.lens.edges.markFirst' : 'panels.lens.edges.markAnother')}
        </button>
        <button
          type="button"
          class={marked.length > 0 ? 'primary' : ''}
          disabled={marked.length === 0 || frame === null || edges.state.value.kind === 'running'}
          onClick={() => frame !== null && void edges.measure(frame)}
        >
          {t('panels.lens.edges.find')}
        </button>
      </div>
      <WorkState
        work={edges.state.value}
        doing={t('panels.lens.edges.doing')}
        onCancel={edges.cancel}
      >
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
  const rms = showNumber(found.rms, 2);
  const each = found.parts.map((part, index) =>
    t('panels.lens.edges.each', { number: index + 1, rms: showNumber(part.rms, 2) }),
  );
  return (
    <>
      <LensFound
        lens={lensOfCalibration(found)}
        origin={() => t('panels.lens.edges.origin', { edges })}
        refused={holds === null || holds.ok ? null : holds.reason}
      >
        {each.length > 1
          ? t('panels.lens.edges.agree', { rms, each: showList(each) })
          : t('panels.lens.edges.agreeOne', { rms })}
      </LensFound>
      {distance === null && (
        <WarningBox
          reason={{
            code: 'focalNominal',
            message: t('panels.lens.edges.focalNominal'),
            remedy: t('panels.lens.edges.focalRemedy'),
          }}
        />
      )}
    </>
  );
}
