import { useState } from 'preact/hooks';
import { changeLauncher, stateLauncher } from '../../app/edits';
import type { LauncherInputs } from '../../app/resultTypes';
import type { Estimate } from '../../core/estimate';
import type { QuantityRule } from '../../core/quantityText';
import { t } from '../../text/text';
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
      <Panel step="models" title={t('models.title')}>
        {t('panels.openFirst')}
      </Panel>
    );
  return (
    <Panel step="models" title={t('models.title')}>
      <p class="muted">{t('models.caution')}</p>
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
      <p class="muted">{t('models.ballAndAir')}</p>
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
          <p>{t('models.run.stale')}</p>
        </div>
      )}
      {asked && work.kind === 'idle' && (
        <div class="notice notice-warning" role="status">
          <p>{t('models.run.cancelled')}</p>
        </div>
      )}
      <WorkState work={work} doing={t('models.run.running')} onCancel={models.cancel}>
        {() => null}
      </WorkState>
      {work.kind !== 'running' && (
        <button type="button" class="primary measure" onClick={() => void models.run()}>
          {t(asked ? 'models.run.again' : 'models.run.predict')}
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
      shots.edit(stateLauncher(nextBore, nextLength), { label: t('edits.launcher') });
    }
  };
  return (
    <Group title={t('models.launcher.title')}>
      <p>{t('models.launcher.none')}</p>
      <EstimateField
        label={t('models.launcher.boreDiameter')}
        rule={RULES.boreDiameter}
        value={bore}
        firstU={relative(SHARE_U)}
        onCommit={(next) => state(next, length)}
      />
      <EstimateField
        label={t('models.launcher.barrelLength')}
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

const mainFields = (): readonly LauncherField[] => [
  {
    ...{ key: 'boreDiameter', label: t('models.launcher.boreDiameter'), rule: RULES.boreDiameter },
    firstU: relative(SHARE_U),
  },
  {
    ...{ key: 'barrelLength', label: t('models.launcher.barrelLength'), rule: RULES.barrelLength },
    firstU: relative(SHARE_U),
  },
  {
    ...{
      key: 'residualPressure',
      label: t('models.launcher.residualPressure'),
      rule: RULES.residualPressure,
    },
    ...{ firstU: relative(0.1), optional: true, placeholder: t('models.launcher.needed') },
    hint: t('models.launcher.hint.residualPressure'),
  },
  {
    ...{
      key: 'sealBurstPressure',
      label: t('models.launcher.sealBurstPressure'),
      rule: RULES.sealBurstPressure,
    },
    ...{ firstU: relative(0.2), optional: true, placeholder: t('models.launcher.needed') },
    hint: t('models.launcher.hint.sealBurstPressure'),
  },
];

const lossFields = (): readonly LauncherField[] => [
  {
    ...{
      key: 'startPosition',
      label: t('models.launcher.startPosition'),
      rule: RULES.startPosition,
    },
    ...{ firstU: () => 1e-3, optional: true, placeholder: t('models.launcher.closeToSeal') },
    hint: t('models.launcher.hint.startPosition'),
  },
  {
    ...{ key: 'gapDischarge', label: t('models.launcher.gapDischarge'), rule: RULES.gapDischarge },
    ...{ firstU: () => 0.15, hint: t('models.launcher.hint.gapDischarge') },
  },
  {
    ...{ key: 'entranceLoss', label: t('models.launcher.entranceLoss'), rule: RULES.entranceLoss },
    ...{ firstU: () => 0.2, hint: t('models.launcher.hint.entranceLoss') },
  },
  {
    ...{ key: 'wallFriction', label: t('models.launcher.wallFriction'), rule: RULES.wallFriction },
    ...{ firstU: () => 0.005, hint: t('models.launcher.hint.wallFriction') },
  },
  {
    ...{ key: 'ballFriction', label: t('models.launcher.ballFriction'), rule: RULES.ballFriction },
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
      <Group title={t('models.launcher.title')}>{mainFields().map(field)}</Group>
      <Fold title={t('models.launcher.losses')}>
        <p class="muted">{t('models.launcher.lossesWhat')}</p>
        {lossFields().map(field)}
      </Fold>
    </>
  );
}
