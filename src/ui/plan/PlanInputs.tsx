import type { Plan } from '../../app/resultTypes';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { EstimateField } from '../fields/EstimateField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Fold, Group } from '../panels/Panel';
import { directionChoices } from '../panels/readoutWords';
import { usePlanEdits } from './edits';
import { LightInputs } from './LightInputs';
import { ModelSpeed } from './ModelSpeed';

const relative = (share: number) => (value: number) => value * share;

/** Everything a plan is made of. */
export function PlanInputs() {
  const { planning } = useDesk().session;
  const { camera, view, scale, ball, speed, muzzleU } = planning.plan.value;
  const change = usePlanEdits().plan;
  const setCamera = (next: Partial<Plan['camera']>) => change({ camera: { ...camera, ...next } });
  const setView = (next: Partial<Plan['view']>) => change({ view: { ...view, ...next } });
  const setScale = (next: Partial<Plan['scale']>) => change({ scale: { ...scale, ...next } });
  const { readout } = camera;
  return (
    <>
      <Group title={t('plan.ball.title')}>
        <EstimateField
          label={t('plan.ball.speed')}
          rule={RULES.speed}
          value={speed}
          firstU={relative(0.05)}
          onCommit={(next) => next !== null && change({ speed: next })}
        />
        <ModelSpeed />
        <EstimateField
          label={t('plan.ball.diameter')}
          rule={RULES.diameter}
          value={ball.diameter}
          firstU={relative(0.002)}
          onCommit={(diameter) => diameter !== null && change({ ball: { ...ball, diameter } })}
        />
        <EstimateField
          label={t('plan.ball.mass')}
          rule={RULES.mass}
          value={ball.mass}
          firstU={relative(0.005)}
          onCommit={(mass) => mass !== null && change({ ball: { ...ball, mass } })}
        />
      </Group>
      <Group title={t('plan.camera.title')}>
        <EstimateField
          label={t('plan.camera.rate')}
          rule={RULES.recordingRate}
          value={camera.rate}
          firstU={relative(5e-5)}
          onCommit={(rate) => rate !== null && setCamera({ rate })}
        />
        <EstimateField
          label={t('plan.camera.exposure')}
          rule={RULES.exposure}
          value={camera.exposure}
          firstU={relative(0.05)}
          onCommit={(exposure) => exposure !== null && setCamera({ exposure })}
        />
        <div class="pair">
          <QuantityField
            label={t('plan.camera.width')}
            rule={RULES.pictureSide}
            value={camera.width}
            onCommit={(width) => width !== null && setCamera({ width })}
          />
          <QuantityField
            label={t('plan.camera.height')}
            rule={RULES.pictureSide}
            value={camera.height}
            onCommit={(height) => height !== null && setCamera({ height })}
          />
        </div>
        <Fold title={t('plan.camera.shutter')} opened={readout.lineTime.value > 0}>
          <ChoiceField
            label={t('plan.camera.read')}
            value={readout.direction}
            choices={directionChoices()}
            onChange={(direction) => setCamera({ readout: { ...readout, direction } })}
          />
          <EstimateField
            label={t('plan.camera.lineTime')}
            rule={RULES.lineTime}
            value={readout.lineTime}
            firstU={relative(0.01)}
            hint={t('plan.camera.lineTimeHint')}
            onCommit={(lineTime) =>
              lineTime !== null && setCamera({ readout: { ...readout, lineTime } })
            }
          />
        </Fold>
      </Group>
      <Group title={t('plan.view.title')}>
        <QuantityField
          label={t('plan.view.across')}
          rule={RULES.fieldOfView}
          value={view.across}
          onCommit={(across) => across !== null && setView({ across })}
        />
        <QuantityField
          label={t('plan.view.beforeMuzzle')}
          rule={RULES.beforeMuzzle}
          value={view.beforeMuzzle}
          onCommit={(beforeMuzzle) => beforeMuzzle !== null && setView({ beforeMuzzle })}
        />
        <QuantityField
          label={t('plan.view.muzzleU')}
          rule={RULES.pixelU}
          value={muzzleU}
          onCommit={(next) => next !== null && change({ muzzleU: next })}
        />
      </Group>
      <Group title={t('plan.scale.title')}>
        <EstimateField
          label={t('plan.scale.length')}
          rule={RULES.knownLength}
          value={scale.length}
          firstU={relative(0.001)}
          onCommit={(length) => length !== null && setScale({ length })}
        />
        <QuantityField
          label={t('plan.scale.endpointU')}
          rule={RULES.pixelU}
          value={scale.endpointU}
          onCommit={(endpointU) => endpointU !== null && setScale({ endpointU })}
        />
        <EstimateField
          label={t('plan.scale.depth')}
          rule={RULES.depthOffset}
          value={scale.depthOffset}
          firstU={() => 0.002}
          onCommit={(depthOffset) => depthOffset !== null && setScale({ depthOffset })}
        />
        <EstimateField
          label={t('plan.scale.distance')}
          rule={RULES.cameraDistance}
          value={scale.cameraDistance}
          firstU={relative(0.02)}
          optional
          placeholder={t('plan.scale.notMeasured')}
          onCommit={(cameraDistance) => setScale({ cameraDistance })}
        />
      </Group>
      <LightInputs />
    </>
  );
}
