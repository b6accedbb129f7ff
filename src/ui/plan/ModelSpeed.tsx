import { MODEL_ORDER } from '../../app/modelComparison';
import { formatQuantity } from '../../core/format';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { LauncherFields } from '../models/ModelPanel';
import { MODEL_CARDS } from '../models/words';
import { Fold } from '../panels/Panel';
import { WorkState } from '../panels/WorkState';

/** The expected speed from a launch model instead of typing it. */
export function ModelSpeed() {
  const { planning } = useDesk().session;
  const { launcher, model, speed } = planning;
  return (
    <Fold title="Speed from a launch model">
      <ChoiceField
        label="Model"
        value={model.value}
        choices={MODEL_ORDER.map((name) => ({ value: name, label: MODEL_CARDS[name].title }))}
        hint="What each takes for granted stands on the Models step."
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
      <WorkState work={speed.value} doing="Running the model" onCancel={planning.cancelSpeed}>
        {(found) => (
          <p role="status">
            The model expects {formatQuantity(found, 'speed', 'm/s')}, which is taken over.
          </p>
        )}
      </WorkState>
      {speed.value.kind !== 'running' && (
        <button type="button" onClick={() => void planning.askModel()}>
          Take the model’s speed
        </button>
      )}
    </Fold>
  );
}
