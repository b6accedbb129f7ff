import { setTiming } from '../../app/edits';
import type { Shot } from '../../app/resultTypes';
import { formatQuantity, numberAt } from '../../core/format';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { ReasonText, WarningBox } from '../shell/Notices';
import { LostFrames } from './LostFrames';
import { Facts, Panel } from './Panel';
import { RateCheck } from './RateCheck';
import { RollingShutter } from './RollingShutter';

const SOURCES = [
  { value: 'recordingRate', label: 'Recording rate, as set on the camera' },
  { value: 'containerTimestamps', label: 'Time stamps in the file' },
] as const;

/** Frames to seconds. */
export function ClockPanel() {
  const { session } = useDesk();
  const { shots, readings, films } = session;
  const draft = shots.draft.value;
  const info = films.film.value?.info;
  if (draft === null || info === undefined) {
    return (
      <Panel step="clock" title="Clock">
        Open footage first.
      </Panel>
    );
  }
  const { timing } = draft;
  const clock = readings.clock.value;
  const set = (change: Partial<Shot['timing']>, label: string) =>
    shots.edit(setTiming(change), { label });
  return (
    <Panel step="clock" title="Clock">
      <ChoiceField
        label="Time comes from"
        value={timing.source}
        choices={SOURCES}
        onChange={(source) => set({ source }, 'time source')}
        hint={
          timing.source === 'recordingRate'
            ? `The file says ${info.playbackRate === null ? 'nothing of a rate' : `${numberAt(info.playbackRate, 5)} frames/s`}; high-speed cameras write the playback rate there.`
            : 'Right for phones, whose frames may come unevenly; wrong for clips that were slowed down when saved.'
        }
      />
      <EstimateField
        label="Recording rate"
        rule={RULES.recordingRate}
        value={timing.recordingRate}
        optional={timing.source === 'containerTimestamps'}
        placeholder="12000 /s"
        // Camera clocks commonly hold 50 parts in a million (common practice, no source).
        firstU={(rate) => rate * 5e-5}
        onCommit={(recordingRate) => set({ recordingRate }, 'recording rate')}
      />
      {clock !== null && !clock.ok && clock.reason.code !== 'noRate' && (
        <div class="notice notice-problem">
          <ReasonText reason={clock.reason} />
        </div>
      )}
      {clock?.ok && (
        <Facts
          facts={[
            [
              'Between frames',
              formatQuantity(
                {
                  value: clock.value.frameInterval,
                  u: clock.value.frameInterval * clock.value.rateRelativeU,
                },
                'time',
                clock.value.frameInterval < 1e-3 ? 'µs' : 'ms',
              ),
            ],
            [
              'Error common to all intervals',
              `${numberAt(clock.value.rateRelativeU * 1e6, 2)} in a million`,
            ],
          ]}
        />
      )}
      {clock?.ok && clock.value.warnings.map((one) => <WarningBox key={one.code} reason={one} />)}
      <EstimateField
        label="Exposure"
        rule={RULES.exposure}
        value={timing.exposure}
        optional
        placeholder="1/50000 s"
        firstU={(exposure) => exposure * 0.05}
        hint="How long each frame collects light; leave empty if unknown."
        onCommit={(exposure) => set({ exposure }, 'exposure')}
      />
      <RollingShutter readout={timing.readout} />
      <LostFrames />
      <RateCheck />
    </Panel>
  );
}
