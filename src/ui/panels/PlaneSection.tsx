import type { DraftPlane } from '../../app/draft';
import { changePlane, newPlane, setScale } from '../../app/edits';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { GridToggle } from './GridToggle';
import { Fold, ToolButton } from './Panel';

/** A rectangle of known size marked on the film, for a camera that does not look squarely at the flight. */
export function PlaneSection() {
  const desk = useDesk();
  const { shots, films } = desk.session;
  const plane = shots.draft.value?.scale.plane ?? null;
  const film = films.film.value?.info;
  if (film === undefined) return null;
  const mark = () => {
    shots.edit(setScale({ plane: newPlane(film.width, film.height) }), { label: t('edits.plane') });
    desk.mode.value = { kind: 'plane' };
  };
  const remove = () => {
    desk.putDown();
    shots.edit(setScale({ plane: null }), { label: t('edits.planeRemoved') });
  };
  return (
    <Fold
      title={t('panels.plane.title', { marked: plane === null ? 'no' : 'yes' })}
      opened={plane !== null}
    >
      <p class="muted">{t('panels.plane.why')}</p>
      {plane === null ? (
        <button type="button" class="cancel" onClick={mark}>
          {t('panels.plane.mark')}
        </button>
      ) : (
        <>
          <div class="row">
            <ToolButton mode={{ kind: 'plane' }}>{t('panels.plane.moveCorners')}</ToolButton>
            <button type="button" onClick={remove}>
              {t('panels.plane.remove')}
            </button>
          </div>
          <p class="field-note">{t('panels.plane.corners')}</p>
          <PlaneInputs plane={plane} />
          <Troubles />
          <GridToggle />
        </>
      )}
    </Fold>
  );
}

/** What the sheet's top warns of, in short beside the inputs that it is about. */
const TROUBLES = [
  'notARectangle',
  'planeDisagrees',
  'planeCorners',
  'planeDistance',
  'beyondHorizon',
] as const;

function Troubles() {
  const scale = useDesk().session.readings.scale.value;
  if (scale === null) return null;
  const reasons = scale.ok ? scale.value.warnings : [scale.reason];
  const troubles = reasons.flatMap(({ code }) => TROUBLES.filter((one) => one === code));
  if (troubles.length === 0) return null;
  const words = troubles.map((one) => t(`panels.plane.trouble.${one}`));
  return <p class="field-problem">{[...words, t('panels.plane.saysMore')].join(' ')}</p>;
}

function PlaneInputs({ plane }: { readonly plane: DraftPlane }) {
  const { shots } = useDesk().session;
  const change = (part: Partial<DraftPlane>, what: string) =>
    shots.edit(changePlane(part), { label: t('edits.planePart', { what }) });
  return (
    <>
      <div class="pair">
        <QuantityField
          label={t('panels.plane.width')}
          rule={RULES.planeSide}
          value={plane.width}
          placeholder="200 mm"
          onCommit={(width) => change({ width }, 'width')}
        />
        <QuantityField
          label={t('panels.plane.height')}
          rule={RULES.planeSide}
          value={plane.height}
          placeholder="50 mm"
          onCommit={(height) => change({ height }, 'height')}
        />
      </div>
      <div class="pair">
        <QuantityField
          label={t('panels.plane.sideU')}
          rule={RULES.lengthU}
          value={plane.u}
          onCommit={(u) => u !== null && change({ u }, 'u')}
        />
        <QuantityField
          label={t('panels.plane.cornerU')}
          rule={RULES.pixelU}
          value={plane.cornerU}
          onCommit={(cornerU) => cornerU !== null && change({ cornerU }, 'cornerU')}
        />
      </div>
      <div class="estimate">
        <QuantityField
          label={t('panels.depth')}
          rule={RULES.depthOffset}
          value={plane.depthOffset}
          hint={t('panels.depthHint')}
          onCommit={(depthOffset) => depthOffset !== null && change({ depthOffset }, 'depth')}
        />
        <QuantityField
          label={t('fields.u')}
          rule={RULES.depthOffsetU}
          value={plane.depthOffsetU}
          onCommit={(u) => u !== null && change({ depthOffsetU: u }, 'depthU')}
        />
      </div>
    </>
  );
}
