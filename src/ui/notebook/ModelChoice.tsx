import { signal } from '@preact/signals';
import type { ModelName } from '../../app/resultTypes';
import { t } from '../../text/text';
import { ChoiceField } from '../fields/ChoiceField';
import { modelChoices } from '../models/words';

/** The model that is drawn beside the shots and fitted to them. */
export const model = signal<ModelName>('gasDynamics');

export const ModelChoice = () => (
  <ChoiceField
    label={t('models.model')}
    value={model.value}
    choices={modelChoices()}
    onChange={(next) => {
      model.value = next;
    }}
  />
);
