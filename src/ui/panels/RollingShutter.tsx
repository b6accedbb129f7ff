import { setTiming } from '../../app/edits';
import type { Shot } from '../../app/resultTypes';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { LampReadout } from './LampReadout';
import { Group } from './Panel';
import { DIRECTIONS } from './readoutWords';

/** How the camera reads its lines: typed, or measured from a lamp. */
export function RollingShutter({ readout }: { readonly readout: Shot['timing']['readout'] }) {
  const { shots } = useDesk().session;
  const set = (change: Partial<typeof readout>, label: string) =>
    shots.edit(setTiming({ readout: { ...readout, ...change } }), { label });
  return (
    <Group title="Rolling shutter">
      <EstimateField
        label="Time per line read"
        rule={RULES.lineTime}
        value={readout.lineTime}
        firstU={() => 0}
        hint="0 for a global shutter. A rolling shutter reads line after line; motion along the readout then biases the speed unless it is stated."
        onCommit={(lineTime) => set({ lineTime: lineTime ?? { value: 0, u: 0 } }, 'time per line')}
      />
      {readout.lineTime.value > 0 && (
        <ChoiceField
          label="Lines are read"
          value={readout.direction}
          choices={DIRECTIONS}
          hint="As seen in the upright image."
          onChange={(direction) => set({ direction }, 'readout direction')}
        />
      )}
      <LampReadout />
    </Group>
  );
}
