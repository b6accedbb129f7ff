import type { Light } from '../../app/resultTypes';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Group } from '../panels/Panel';
import { usePlanEdits } from './edits';

const KINDS = ['contrast', 'sensor'] as const;

/** What a light is taken to be when its kind is changed. */
const FIRST = {
  contrast: { kind: 'contrast', contrastToNoise: 20 },
  sensor: {
    kind: 'sensor',
    fullWell: 10_000,
    readNoise: 20,
    ball: 0.7,
    background: 0.15,
    bitDepth: 8,
  },
} as const;

/** How the ball stands out, as a picture taken already shows it. */
export function LightInputs() {
  const { planning } = useDesk().session;
  const { picture } = planning.plan.value;
  const { light } = picture;
  const change = usePlanEdits().plan;
  const set = (next: Partial<typeof picture>) => change({ picture: { ...picture, ...next } });
  const setLight = (next: Partial<Light>) => set({ light: { ...light, ...next } as Light });
  return (
    <Group title={t('plan.light.title')}>
      <ChoiceField
        label={t('plan.light.kind')}
        value={light.kind}
        choices={KINDS.map((value) => ({ value, label: t(`plan.light.${value}`) }))}
        hint={t('plan.light.kindHint')}
        onChange={(kind) =>
          set({ light: { exposure: light.exposure, factor: light.factor, ...FIRST[kind] } })
        }
      />
      {light.kind === 'contrast' ? (
        <QuantityField
          label={t('plan.light.contrastToNoise')}
          rule={RULES.contrastToNoise}
          value={light.contrastToNoise}
          onCommit={(next) => next !== null && setLight({ contrastToNoise: next })}
        />
      ) : (
        <SensorInputs light={light} onChange={setLight} />
      )}
      <div class="pair">
        <QuantityField
          label={t('plan.light.exposure')}
          rule={RULES.exposure}
          value={light.exposure}
          onCommit={(exposure) => exposure !== null && setLight({ exposure })}
        />
        <QuantityField
          label={t('plan.light.factor')}
          rule={RULES.lightFactor}
          value={light.factor}
          onCommit={(factor) => factor !== null && setLight({ factor })}
        />
      </div>
      <QuantityField
        label={t('plan.light.softness')}
        rule={RULES.softness}
        value={picture.softness}
        hint={t('plan.light.softnessHint')}
        onCommit={(softness) => softness !== null && set({ softness })}
      />
      <label class="option">
        <input
          type="checkbox"
          checked={picture.coded}
          onChange={(event) => set({ coded: event.currentTarget.checked })}
        />
        {t('plan.light.coded')}
      </label>
    </Group>
  );
}

function SensorInputs(props: {
  readonly light: Extract<Light, { kind: 'sensor' }>;
  onChange(next: Partial<Light>): void;
}) {
  const { light, onChange } = props;
  return (
    <>
      <div class="pair">
        <QuantityField
          label={t('plan.light.fullWell')}
          rule={RULES.electrons}
          value={light.fullWell}
          onCommit={(fullWell) => fullWell !== null && onChange({ fullWell })}
        />
        <QuantityField
          label={t('plan.light.readNoise')}
          rule={RULES.readNoise}
          value={light.readNoise}
          onCommit={(readNoise) => readNoise !== null && onChange({ readNoise })}
        />
      </div>
      <div class="pair">
        <QuantityField
          label={t('plan.light.greyOfBall')}
          rule={RULES.greyShare}
          value={light.ball}
          onCommit={(ball) => ball !== null && onChange({ ball })}
        />
        <QuantityField
          label={t('plan.light.greyOfBackground')}
          rule={RULES.greyShare}
          value={light.background}
          onCommit={(background) => background !== null && onChange({ background })}
        />
      </div>
      <QuantityField
        label={t('plan.light.bitDepth')}
        rule={RULES.bitDepth}
        value={light.bitDepth}
        onCommit={(bitDepth) => bitDepth !== null && onChange({ bitDepth })}
      />
    </>
  );
}
