import { showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { LauncherFields } from '../models/ModelPanel';
import { modelChoices } from '../models/words';
import { Fold } from '../panels/Panel';
import { WorkState } from '../panels/WorkState';

/** The expected speed from a launch model instead of typing it. */
export function ModelSpeed() {
  const { planning } = useDesk().session;
  const { launcher, model, speed } = planning;
  return (
    <Fold title={t('plan.model.title')}>
      <ChoiceField
        label={t('models.model')}
        value={model.value}
        choices={modelChoices()}
        hint={t('plan.model.hint')}
        onChange={(next) => {
          model.value = next;
        }}
      />
      <LauncherFields
        launcher={launcher.value}
        onChange={(next) => {
          launcher.value = { ...launcher.value, ...next };
        }}
      />
      <WorkState work={speed.value} doing={t('plan.model.running')} onCancel={planning.cancelSpeed}>
        {(found) => (
          <p role="status">
            {t('plan.model.found', { speed: showQuantity(found, 'speed', 'm/s') })}
          </p>
        )}
      </WorkState>
      {speed.value.kind !== 'running' && (
        <button type="button" onClick={() => void planning.askModel()}>
          {t('plan.model.take')}
        </button>
      )}
    </Fold>
  );
}
