import { signal } from '@preact/signals';
import { MODEL_ORDER } from '../../app/modelComparison';
import type { ModelName } from '../../app/resultTypes';
import { ChoiceField } from '../fields/ChoiceField';
import { MODEL_CARDS } from '../models/words';

/** The model that is drawn beside the shots and fitted to them. */
export const model = signal<ModelName>('gasDynamics');

export const ModelChoice = () => (
  <ChoiceField
    label="Model"
    value={model.value}
    choices={MODEL_ORDER.map((value) => ({ value, label: MODEL_CARDS[value].title }))}
    onChange={(next) => {
      model.value = next;
    }}
  />
);
