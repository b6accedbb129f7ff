import { useState } from 'preact/hooks';
import { PREDICTIONS_CAUTION } from '../../app/cautions';
import { changeLauncher, stateLauncher } from '../../app/edits';
import type { LauncherInputs } from '../../app/resultTypes';
import type { Estimate } from '../../core/estimate';
import type { QuantityRule } from '../../core/quantityText';
import { useDesk } from '../desk';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { Fold, Group, Panel } from '../panels/Panel';
import { WorkState } from '../panels/WorkState';

const SHARE_U = 0.002;
const relative = (share: number) => (value: number) => value * share;

/** What the models need to know of the launcher, and the way to run them. */
export function ModelPanel() {
  const { shots } = useDesk().session;
  const draft = shots.draft.value;
  if (draft === null)
    return (
      <Panel step="models" title="Models">
        Open footage first.
      </Panel>
    );
  return (
    <Panel step="models" title="Models">
      <p class="muted">{PREDICTIONS_CAUTION}</p>
      {draft.launcher === null ? (
        <FirstInputs />
      ) : (
        <>
          <Predict />
          <LauncherFields
            launcher={draft.launcher}
            onChange={(next, label) => shots.edit(changeLauncher(next), { label })}
          />
        </>
      )}
      <p class="muted">Ball and air are stated on the Ball step; they go into the models too.</p>
    </Panel>
  );
}

/** Starts the models and says how far they are. */
export function Predict() {
  const { models } = useDesk().session;
  const work = models.state.value;
  const asked = models.asked.value !== null;
  return (
    <div class="stack">
      {models.isStale.value && work.kind !== 'running' && (
        <div class="notice notice-warning" role="status">
          <p>Launcher, film or coverage changed after the models were run. Predict again.</p>
        </div>
      )}
      {asked && work.kind === 'idle' && (
        <div class="notice notice-warning" role="status">
          <p>Cancelled: not every model is done.</p>
        </div>
      )}
      <WorkState work={work} doing="Running the models" onCancel={models.cancel}>
        {() => null}
      </WorkState>
      {work.kind !== 'running' && (
        <button type="button" class="primary measure" onClick={() => void models.run()}>
          {asked ? 'Predict again' : 'Predict'}
        </button>
      )}
    </div>
  );
}

/** Bore and length make a launcher; until both are typed there is none. */
function FirstInputs() {
  const { shots } = useDesk().session;
  const [bore, setBore] = useState<Estimate | null>(null);
  const [length, setLength] = useState<Estimate | null>(null);
  const state = (nextBore: Estimate | null, nextLength: Estimate | null) => {
    setBore(nextBore);
    setLength(nextLength);
    if (nextBore !== null && nextLength !== null) {
      shots.edit(stateLauncher(nextBore, nextLength), { label: 'launcher' });
    }
  };
  return (
    <Group title="Launcher">
      <p>No launcher is stated yet. Bore and barrel length come first.</p>
      <EstimateField
        label="Bore diameter"
        rule={RULES.boreDiameter}
        value={bore}
        firstU={relative(SHARE_U)}
        onCommit={(next) => state(next, length)}
      />
      <EstimateField
        label="Barrel length, seal to seal"
        rule={RULES.barrelLength}
        value={length}
        firstU={relative(SHARE_U)}
        onCommit={(next) => state(bore, next)}
      />
    </Group>
  );
}

interface LauncherField {
  readonly key: keyof LauncherInputs;
  readonly label: string;
  readonly rule: QuantityRule;
  readonly firstU: (value: number) => number;
  readonly optional?: boolean;
  readonly placeholder?: string;
  readonly hint?: string;
}

const MAIN: readonly LauncherField[] = [
  {
    ...{ key: 'boreDiameter', label: 'Bore diameter', rule: RULES.boreDiameter },
    firstU: relative(SHARE_U),
  },
  {
    ...{ key: 'barrelLength', label: 'Barrel length, seal to seal', rule: RULES.barrelLength },
    firstU: relative(SHARE_U),
  },
  {
    ...{ key: 'residualPressure', label: 'Residual pressure', rule: RULES.residualPressure },
    ...{ firstU: relative(0.1), optional: true, placeholder: 'needed' },
    hint: 'Absolute pressure of the air left in the barrel.',
  },
  {
    ...{ key: 'sealBurstPressure', label: 'Seal burst pressure', rule: RULES.sealBurstPressure },
    ...{ firstU: relative(0.2), optional: true, placeholder: 'needed' },
    hint: 'How far the pressure inside exceeds that outside when the muzzle seal opens.',
  },
];

const LOSSES: readonly LauncherField[] = [
  {
    ...{ key: 'startPosition', label: 'Start of the ball’s centre', rule: RULES.startPosition },
    ...{ firstU: () => 1e-3, optional: true, placeholder: 'close to the seal' },
    hint: 'From the rear seal. Left empty: the ball lies 1 ± 0.5 mm from it.',
  },
  {
    ...{ key: 'gapDischarge', label: 'Discharge of the gap', rule: RULES.gapDischarge },
    ...{ firstU: () => 0.15, hint: 'Coefficient of the leak past the ball; 0: no leak.' },
  },
  {
    ...{ key: 'entranceLoss', label: 'Entrance loss', rule: RULES.entranceLoss },
    ...{ firstU: () => 0.2, hint: 'About 0.5 with a sharp edge, near 0 with a bell mouth.' },
  },
  {
    ...{ key: 'wallFriction', label: 'Wall friction', rule: RULES.wallFriction },
    ...{ firstU: () => 0.005, hint: 'Darcy’s factor: about 0.02 in a smooth tube.' },
  },
  {
    ...{ key: 'ballFriction', label: 'Ball friction, N', rule: RULES.ballFriction },
    firstU: relative(0.5),
  },
];

/** Everything a launch model needs to know of a launcher besides ball and air. */
export function LauncherFields(props: {
  readonly launcher: LauncherInputs;
  onChange(next: Partial<LauncherInputs>, label: string): void;
}) {
  const { launcher, onChange } = props;
  const field = ({ key, ...props }: LauncherField) => (
    <EstimateField
      key={key}
      {...props}
      value={launcher[key]}
      onCommit={(next) =>
        (next !== null || props.optional) && onChange({ [key]: next }, props.label)
      }
    />
  );
  return (
    <>
      <Group title="Launcher">{MAIN.map(field)}</Group>
      <Fold title="Start, leak and losses">
        <p class="muted">Common values unless you know better; each with its own uncertainty.</p>
        {LOSSES.map(field)}
      </Fold>
    </>
  );
}
