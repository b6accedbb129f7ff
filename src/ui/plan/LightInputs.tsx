import type { Light } from '../../app/resultTypes';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Group } from '../panels/Panel';

const KINDS = [
  { value: 'contrast', label: 'contrast-to-noise ratio' },
  { value: 'sensor', label: 'electrons and grey values' },
] as const;

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
  const set = (next: Partial<typeof picture>) =>
    planning.change({ picture: { ...picture, ...next } });
  const setLight = (next: Partial<Light>) => set({ light: { ...light, ...next } as Light });
  return (
    <Group title="Picture and light">
      <ChoiceField
        label="The ball stands out as told by"
        value={light.kind}
        choices={KINDS}
        hint="Read off a picture that was taken with the light there is now."
        onChange={(kind) =>
          set({ light: { exposure: light.exposure, factor: light.factor, ...FIRST[kind] } })
        }
      />
      {light.kind === 'contrast' ? (
        <QuantityField
          label="Contrast of the ball over the noise"
          rule={RULES.contrastToNoise}
          value={light.contrastToNoise}
          onCommit={(next) => next !== null && setLight({ contrastToNoise: next })}
        />
      ) : (
        <SensorInputs light={light} onChange={setLight} />
      )}
      <div class="pair">
        <QuantityField
          label="Exposure of that picture"
          rule={RULES.exposure}
          value={light.exposure}
          onCommit={(exposure) => exposure !== null && setLight({ exposure })}
        />
        <QuantityField
          label="Times its light"
          rule={RULES.lightFactor}
          value={light.factor}
          onCommit={(factor) => factor !== null && setLight({ factor })}
        />
      </div>
      <QuantityField
        label="Blur of a still edge"
        rule={RULES.softness}
        value={picture.softness}
        hint="Standard deviation; 0.5 to 0.9 px in good focus."
        onCommit={(softness) => softness !== null && set({ softness })}
      />
      <label class="option">
        <input
          type="checkbox"
          checked={picture.coded}
          onChange={(event) => set({ coded: event.currentTarget.checked })}
        />
        The film is kept with loss (H.264 and its like)
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
          label="Electrons at white"
          rule={RULES.electrons}
          value={light.fullWell}
          onCommit={(fullWell) => fullWell !== null && onChange({ fullWell })}
        />
        <QuantityField
          label="Read noise, electrons"
          rule={RULES.readNoise}
          value={light.readNoise}
          onCommit={(readNoise) => readNoise !== null && onChange({ readNoise })}
        />
      </div>
      <div class="pair">
        <QuantityField
          label="Grey of the ball"
          rule={RULES.greyShare}
          value={light.ball}
          onCommit={(ball) => ball !== null && onChange({ ball })}
        />
        <QuantityField
          label="Grey of the background"
          rule={RULES.greyShare}
          value={light.background}
          onCommit={(background) => background !== null && onChange({ background })}
        />
      </div>
      <QuantityField
        label="Bits a pixel"
        rule={RULES.bitDepth}
        value={light.bitDepth}
        onCommit={(bitDepth) => bitDepth !== null && onChange({ bitDepth })}
      />
    </>
  );
}
