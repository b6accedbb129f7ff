import { setCoverage, setFit } from '../../app/edits';
import { SPEED_UNITS } from '../../app/preferences';
import type { FitChoice } from '../../app/resultTypes';
import { MODEL_WORDS } from '../../report/words';
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
      <Panel step="result" title="Result">
        Open footage first.
      </Panel>
    );
  const freshness = measuring.freshness.value;
  const models = MODELS.includes(draft.fit.model) ? MODELS : [...MODELS, draft.fit.model];
  return (
    <Panel step="result" title="Result">
      {(reduction === null ||
        freshness === 'measureAgain' ||
        measuring.status.value.kind !== 'done') && <Measure />}
      {reduction === null ? (
        <p>Nothing has been measured yet.</p>
      ) : (
        <div
          class={freshness === 'measureAgain' ? 'stale' : ''}
          aria-busy={freshness === 'refitting'}
        >
          <Statement result={reduction.result} />
        </div>
      )}
      <ChoiceField
        label="Speed in"
        value={speedUnit.value}
        choices={SPEED_UNITS.map((unit) => ({ value: unit, label: unit }))}
        onChange={(unit) => {
          speedUnit.value = unit;
        }}
      />
      <div class="row">
        <button type="button" disabled={reduction === null} onClick={() => void saveResult(desk)}>
          Save result…
        </button>
        <button type="button" onClick={() => void saveShot(desk)}>
          Save shot…
        </button>
        <button
          type="button"
          disabled={reduction === null}
          onClick={() => void writeInNotebook(desk)}
        >
          Add to notebook
        </button>
        <button
          type="button"
          disabled={reduction === null}
          onClick={() => {
            desk.place.value = 'report';
          }}
        >
          Report…
        </button>
      </div>
      <Group title="How it is fitted">
        <ChoiceField
          label="Motion"
          value={draft.fit.model}
          choices={models.map((value) => ({ value, label: MODEL_WORDS[value] ?? value }))}
          onChange={(model) => shots.edit(setFit({ model }), { label: 'motion model' })}
        />
        <label class="option">
          <input
            type="checkbox"
            checked={draft.fit.robust}
            onChange={(event) =>
              shots.edit(setFit({ robust: event.currentTarget.checked }), {
                label: 'outlier handling',
              })
            }
          />
          Leave out frames that do not fit
        </label>
        <QuantityField
          label="Coverage of the intervals"
          rule={RULES.coverage}
          value={draft.coverage}
          onCommit={(coverage) =>
            coverage !== null && shots.edit(setCoverage(coverage), { label: 'coverage' })
          }
        />
      </Group>
    </Panel>
  );
}
