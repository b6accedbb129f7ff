import { MODEL_ORDER } from '../../app/modelComparison';
import type { ModelName } from '../../app/resultTypes';
import type { LookName } from '../../plots/looks';
import { t } from '../../text/text';

/** The line of each model in the plots. */
export const MODEL_LOOKS: Readonly<Record<ModelName, LookName>> = {
  constantForce: 'dots',
  momentum: 'dashes',
  gasDynamics: 'solid',
  expansion: 'dotDash',
};

export const modelTitle = (name: ModelName): string => t(`models.cards.${name}.title`);

/** Models to choose from. */
export const modelChoices = () => MODEL_ORDER.map((value) => ({ value, label: modelTitle(value) }));
