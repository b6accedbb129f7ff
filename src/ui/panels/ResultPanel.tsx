import { setCoverage, setFit } from '../../app/edits';
import { SPEED_UNITS } from '../../app/preferences';
import type { FitChoice } from '../../app/resultTypes';
import { t } from '../../text/text';
import { saveResult, saveShot, writeInNotebook } from '../actions';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Statement } from '../result/Statement';
import { Measure } from './Measure';
import { Group, Panel } from './Panel';

const MODELS: readonly FitChoice[] = ['auto', 'uniform', 'constantAcceleration', 'quadraticDrag'];

/** The answer in words and numbers; its evidence stands under the streak image. */
export function ResultPanel() {
  const desk = useDesk();
  const { measuring, shots } = desk.session;
  const { speedUnit } = desk.preferences;
  const draft = shots.draft.value;
  const reduction = measuring.reduction.value;
  if (draft === null)
    return (
      <Panel step="result" title={t('panels.result.title')}>
        {t('panels.openFirst')}
      </Panel>
    );
  const freshness = measuring.freshness.value;
  const models = MODELS.includes(draft.fit.model) ? MODELS : [...MODELS, draft.fit.model];
  return (
    <Panel step="result" title={t('panels.result.title')}>
      {(reduction === null ||
        freshness === 'measureAgain' ||
        measuring.status.value.kind !== 'done') && <Measure />}
      {reduction === null ? (
        <p>{t('panels.result.nothingYet')}</p>
      ) : (
        <div
          class={freshness === 'measureAgain' ? 'stale' : ''}
          aria-busy={freshness === 'refitting'}
        >
          <Statement result={reduction.result} />
        </div>
      )}
      <ChoiceField
        label={t('panels.result.speedIn')}
        value={speedUnit.value}
        choices={SPEED_UNITS.map((unit) => ({ value: unit, label: unit }))}
        onChange={(unit) => {
          speedUnit.value = unit;
        }}
      />
      <div class="row">
        <button type="button" disabled={reduction === null} onClick={() => void saveResult(desk)}>
          {t('panels.result.saveResult')}
        </button>
        <button type="button" onClick={() => void saveShot(desk)}>
          {t('panels.result.saveShot')}
        </button>
        <button
          type="button"
          disabled={reduction === null}
          onClick={() => void writeInNotebook(desk)}
        >
          {t('panels.result.toNotebook')}
        </button>
        <button
          type="button"
          disabled={reduction === null}
          onClick={() => {
            desk.place.value = 'report';
          }}
        >
          {t('panels.result.report')}
        </button>
      </div>
      <Group title={t('panels.result.how')}>
        <ChoiceField
          label={t('panels.result.motion')}
          value={draft.fit.model}
          choices={models.map((value) => ({ value, label: t(`panels.result.model.${value}`) }))}
          onChange={(model) => shots.edit(setFit({ model }), { label: t('edits.model') })}
        />
        <label class="option">
          <input
            type="checkbox"
            checked={draft.fit.robust}
            onChange={(event) =>
              shots.edit(setFit({ robust: event.currentTarget.checked }), {
                label: t('edits.outliers'),
              })
            }
          />
          {t('panels.result.leaveOut')}
        </label>
        <QuantityField
          label={t('panels.result.coverage')}
          rule={RULES.coverage}
          value={draft.coverage}
          onCommit={(coverage) =>
            coverage !== null && shots.edit(setCoverage(coverage), { label: t('edits.coverage') })
          }
        />
      </Group>
    </Panel>
  );
}
