import { addLength, newLength, setMuzzle, setScale } from '../../app/edits';
import { showFixed, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { EstimateField } from '../fields/EstimateField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { ReasonText, WarningBox } from '../shell/Notices';
import { Facts } from './Facts';
import { KnownLengthInputs } from './KnownLengthInputs';
import { LensSection } from './LensSection';
import { Group, Panel, ToolButton } from './Panel';
import { PlaneSection } from './PlaneSection';

/** Pixels to metres, and where the tube ends. */
export function ScalePanel() {
  const desk = useDesk();
  const { shots, films } = desk.session;
  const draft = shots.draft.value;
  const info = films.film.value?.info;
  if (draft === null || info === undefined) {
    return (
      <Panel step="scale" title={t('panels.scale.title')}>
        {t('panels.openFirst')}
      </Panel>
    );
  }
  const { lengths, cameraDistance } = draft.scale;
  const draw = () => {
    shots.edit(addLength(newLength(info.width, info.height, lengths.length)), {
      label: t('edits.newLength'),
    });
    desk.mode.value = { kind: 'length', index: lengths.length };
  };
  return (
    <Panel step="scale" title={t('panels.scale.title')}>
      <Combined />
      {lengths.map((length, index) => (
        <KnownLengthInputs key={index} index={index} length={length} />
      ))}
      <button type="button" class={lengths.length === 0 ? 'primary' : ''} onClick={draw}>
        {t(lengths.length === 0 ? 'panels.scale.drawFirst' : 'panels.scale.drawAnother')}
      </button>
      <EstimateField
        label={t('panels.scale.distance')}
        rule={RULES.cameraDistance}
        value={cameraDistance}
        optional
        placeholder="1.2 m"
        firstU={(distance) => distance * 0.02}
        hint={t('panels.scale.distanceHint')}
        onCommit={(distance) =>
          shots.edit(setScale({ cameraDistance: distance }), { label: t('edits.cameraDistance') })
        }
      />
      <MuzzleInputs width={info.width} height={info.height} />
      <PlaneSection />
      <LensSection />
    </Panel>
  );
}

function Combined() {
  const reading = useDesk().session.readings.scale.value;
  if (reading === null) return null;
  if (!reading.ok) {
    return (
      <div class="notice notice-problem" data-code={reading.reason.code}>
        <ReasonText reason={reading.reason} />
      </div>
    );
  }
  const { consistency, warnings, view } = reading.value;
  const byPlane = view.metresPerPixel !== null;
  return (
    <>
      <Facts
        facts={[
          [
            t('panels.scale.onFlightLine'),
            t('panels.perPixel', { scale: showQuantity(reading.value, 'length', 'mm') }),
          ],
          [t('panels.scale.setBy'), t(byPlane ? 'panels.scale.byPlane' : 'panels.scale.byLengths')],
          [
            t(byPlane ? 'panels.scale.agreementWith' : 'panels.scale.agreementOf'),
            consistency === null
              ? t(byPlane ? 'panels.scale.noLength' : 'panels.scale.oneAlone')
              : t('panels.scale.chiSquare', {
                  chiSquare: showFixed(consistency.chiSquare, 2),
                  dof: String(consistency.dof),
                }),
          ],
        ]}
      />
      {warnings.map((one) => (
        <WarningBox key={one.code} reason={one} />
      ))}
    </>
  );
}

function MuzzleInputs({ width, height }: { readonly width: number; readonly height: number }) {
  const desk = useDesk();
  const { shots } = desk.session;
  const muzzle = shots.draft.value?.muzzle ?? null;
  const outside =
    muzzle !== null &&
    (muzzle.point[0] < 0 ||
      muzzle.point[1] < 0 ||
      muzzle.point[0] > width - 1 ||
      muzzle.point[1] > height - 1);
  return (
    <Group title={t('panels.scale.muzzle')}>
      <p class="muted">{t('panels.scale.muzzleWhere')}</p>
      <div class="row">
        <ToolButton mode={{ kind: 'muzzle' }}>
          {t(muzzle === null ? 'panels.scale.mark' : 'panels.scale.move')}
        </ToolButton>
        {muzzle !== null && (
          <button
            type="button"
            disabled={muzzle.axis === null}
            onClick={() =>
              shots.edit(setMuzzle({ ...muzzle, axis: null }), { label: t('edits.direction') })
            }
          >
            {t('panels.scale.fitDirection')}
          </button>
        )}
      </div>
      {outside && (
        <WarningBox
          reason={{
            code: 'muzzleOutside',
            message: t('panels.scale.outside'),
            remedy: t('panels.scale.outsideRemedy'),
          }}
        />
      )}
      {muzzle !== null && (
        <>
          <QuantityField
            label={t('panels.scale.placeU')}
            rule={RULES.pixelU}
            value={muzzle.u}
            onCommit={(u) =>
              u !== null && shots.edit(setMuzzle({ ...muzzle, u }), { label: t('edits.muzzleU') })
            }
          />
          <Facts
            facts={[
              [
                t('panels.scale.point'),
                t('panels.fromPlace', {
                  x: showFixed(muzzle.point[0], 2),
                  y: showFixed(muzzle.point[1], 2),
                }),
              ],
              [
                t('panels.scale.direction'),
                t(muzzle.axis === null ? 'panels.scale.fitted' : 'panels.scale.byHand'),
              ],
            ]}
          />
        </>
      )}
    </Group>
  );
}
