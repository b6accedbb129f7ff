import { addLength, newLength, setMuzzle, setScale } from '../../app/edits';
import { formatQuantity } from '../../core/format';
import { useDesk } from '../desk';
import { EstimateField } from '../fields/EstimateField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { ReasonText, WarningBox } from '../shell/Notices';
import { KnownLengthInputs } from './KnownLengthInputs';
import { LensSection } from './LensSection';
import { Facts, Group, Panel, ToolButton } from './Panel';
import { PlaneSection } from './PlaneSection';

/** Pixels to metres, and where the tube ends. */
export function ScalePanel() {
  const desk = useDesk();
  const { shots, films } = desk.session;
  const draft = shots.draft.value;
  const info = films.film.value?.info;
  if (draft === null || info === undefined) {
    return (
      <Panel step="scale" title="Scale">
        Open footage first.
      </Panel>
    );
  }
  const { lengths, cameraDistance } = draft.scale;
  const draw = () => {
    shots.edit(addLength(newLength(info.width, info.height, lengths.length)), {
      label: 'new length',
    });
    desk.mode.value = { kind: 'length', index: lengths.length };
  };
  return (
    <Panel step="scale" title="Scale">
      <Combined />
      {lengths.map((length, index) => (
        <KnownLengthInputs key={index} index={index} length={length} />
      ))}
      <button type="button" class={lengths.length === 0 ? 'primary' : ''} onClick={draw}>
        Draw {lengths.length === 0 ? 'a known length' : 'another length'}
      </button>
      <EstimateField
        label="Camera distance"
        rule={RULES.cameraDistance}
        value={cameraDistance}
        optional
        placeholder="1.2 m"
        firstU={(distance) => distance * 0.02}
        hint="From the lens to the flight line. A scale in front of or behind the flight line looks larger or smaller; the distance corrects for it."
        onCommit={(distance) =>
          shots.edit(setScale({ cameraDistance: distance }), { label: 'camera distance' })
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
          ['On the flight line', `${formatQuantity(reading.value, 'length', 'mm')} per pixel`],
          ['Set by', byPlane ? 'the marked plane' : 'the known lengths'],
          [
            byPlane ? 'Agreement with the lengths' : 'Agreement of the lengths',
            consistency === null
              ? byPlane
                ? 'no length to check it by'
                : 'one length alone cannot be checked'
              : `chi-square ${consistency.chiSquare.toFixed(2)} for ${consistency.dof}`,
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
    <Group title="Muzzle plane">
      <p class="muted">
        Mark it in the middle of the bore, where the ball's centre leaves the tube.
      </p>
      <div class="row">
        <ToolButton mode={{ kind: 'muzzle' }}>
          {muzzle === null ? 'Mark it on the film' : 'Move it on the film'}
        </ToolButton>
        {muzzle !== null && (
          <button
            type="button"
            disabled={muzzle.axis === null}
            onClick={() =>
              shots.edit(setMuzzle({ ...muzzle, axis: null }), { label: 'direction of travel' })
            }
          >
            Fit the direction from the path
          </button>
        )}
      </div>
      {outside && (
        <WarningBox
          reason={{
            code: 'muzzleOutside',
            message: 'The muzzle plane lies outside the picture.',
            remedy: 'Move it onto the end of the tube, unless that is really out of view.',
          }}
        />
      )}
      {muzzle !== null && (
        <>
          <QuantityField
            label="± u of its place along the flight"
            rule={RULES.pixelU}
            value={muzzle.u}
            onCommit={(u) =>
              u !== null && shots.edit(setMuzzle({ ...muzzle, u }), { label: 'muzzle uncertainty' })
            }
          />
          <Facts
            facts={[
              ['Point', `x ${muzzle.point[0].toFixed(2)}, y ${muzzle.point[1].toFixed(2)} px`],
              [
                'Direction of travel',
                muzzle.axis === null ? 'fitted from the path' : 'drawn by hand',
              ],
            ]}
          />
        </>
      )}
    </Group>
  );
}
