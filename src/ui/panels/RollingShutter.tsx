import { setTiming } from '../../app/edits';
import type { Shot } from '../../app/resultTypes';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { LampReadout } from './LampReadout';
import { Group } from './Panel';
import { directionChoices } from './readoutWords';

/** How the camera reads its lines: typed, or measured from a lamp. */
export function RollingShutter({ readout }: { readonly readout: Shot['timing']['readout'] }) {
  const { shots } = useDesk().session;
  const set = (change: Partial<typeof readout>, label: string) =>
    shots.edit(setTiming({ readout: { ...readout, ...change } }), { label });
  return (
    <Group title={t('panels.shutter.title')}>
      <EstimateField
        label={t('panels.shutter.lineTime')}
        rule={RULES.lineTime}
        value={readout.lineTime}
        firstU={() => 0}
        hint={t('panels.shutter.lineTimeHint')}
        onCommit={(lineTime) => set({ lineTime: lineTime ?? { value: 0, u: 0 } }, 'time per line')}
      />
      {readout.lineTime.value > 0 && (
        <ChoiceField
          label={t('panels.shutter.read')}
          value={readout.direction}
          choices={directionChoices()}
          hint={t('panels.shutter.upright')}
          onChange={(direction) => set({ direction }, 'readout direction')}
        />
      )}
      <LampReadout />
    </Group>
  );
}
