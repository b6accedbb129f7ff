import type { ComponentType } from 'preact';
import type { StepName } from '../../app/draft';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ModelPanel } from '../models/ModelPanel';
import { BallPanel } from '../panels/BallPanel';
import { ClockPanel } from '../panels/ClockPanel';
import { FootagePanel } from '../panels/FootagePanel';
import { ResultPanel } from '../panels/ResultPanel';
import { ScalePanel } from '../panels/ScalePanel';
import { SealPanel } from '../panels/SealPanel';
import { Icon } from './Icon';

const PANELS: Readonly<Record<StepName, ComponentType>> = {
  footage: FootagePanel,
  clock: ClockPanel,
  scale: ScalePanel,
  ball: BallPanel,
  seal: SealPanel,
  result: ResultPanel,
  models: ModelPanel,
};

/** Inputs and explanations of the step looked at; folds away. */
export function SideSheet() {
  const desk = useDesk();
  const { sheetOpen } = desk.preferences;
  const StepPanel = PANELS[desk.step.value];
  return (
    <aside class="sheet" aria-label={t('shell.sheet.label')}>
      <div class="sheet-scroll">
        <button
          type="button"
          class="plain sheet-fold"
          aria-expanded={sheetOpen.value}
          onClick={() => {
            sheetOpen.value = !sheetOpen.value;
          }}
        >
          <Icon name="sheet" /> {t(sheetOpen.value ? 'shell.sheet.fold' : 'shell.sheet.unfold')}
        </button>
        {sheetOpen.value && <StepPanel />}
      </div>
    </aside>
  );
}
