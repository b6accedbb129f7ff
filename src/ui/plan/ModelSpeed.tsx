import { showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { LauncherFields } from '../models/ModelPanel';
import { modelChoices } from '../models/words';
import { Fold } from '../panels/Panel';
import { WorkState } from '../panels/WorkState';
import { usePlanEdits } from './edits';

/** The expected speed from a launch model instead of typing it. */
export function ModelSpeed() {
  const { planning } = useDesk().session;
  const { launcher, model, speed } = planning;
  const edits = usePlanEdits();
  return (
    <Fold title={t('plan.model.title')}>
      <ChoiceField
        label={t('models.model')}
        value={model.value}
        choices={modelChoices()}
        hint={t('plan.model.hint')}
        onChange={(next) => edits.inputs({ model: next })}
      />
      <LauncherFields
        launcher={launcher.value}
        onChange={(next) => edits.inputs({ launcher: { ...launcher.value, ...next } })}
      />
      <WorkState work={speed.value} doing={t('plan.model.running')} onCancel={planning.cancelSpeed}>
        {(found) => (
          <p role="status">
            {t('plan.model.found', { speed: showQuantity(found, 'speed', 'm/s') })}
          </p>
        )}
      </WorkState>
      {speed.value.kind !== 'running' && (
        <button type="button" onClick={() => void planning.askModel(edits.named('modelSpeed'))}>
          {t('plan.model.take')}
        </button>
      )}
    </Fold>
  );
}
