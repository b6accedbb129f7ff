import { setTiming } from '../../app/edits';
import type { Shot } from '../../app/resultTypes';
import { showNumberAt, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { ReasonText, WarningBox } from '../shell/Notices';
import { Facts } from './Facts';
import { LostFrames } from './LostFrames';
import { Panel } from './Panel';
import { RateCheck } from './RateCheck';
import { RollingShutter } from './RollingShutter';

const SOURCES = ['recordingRate', 'containerTimestamps'] as const;

/** Frames to seconds. */
export function ClockPanel() {
  const { session } = useDesk();
  const { shots, readings, films } = session;
  const draft = shots.draft.value;
  const info = films.film.value?.info;
  if (draft === null || info === undefined) {
    return (
      <Panel step="clock" title={t('panels.clock.title')}>
        {t('panels.openFirst')}
      </Panel>
    );
  }
  const { timing } = draft;
  const clock = readings.clock.value;
  const set = (change: Partial<Shot['timing']>, label: string) =>
    shots.edit(setTiming(change), { label });
  return (
    <Panel step="clock" title={t('panels.clock.title')}>
      <ChoiceField
        label={t('panels.clock.source')}
        value={timing.source}
        choices={SOURCES.map((source) => ({ value: source, label: t(`panels.clock.${source}`) }))}
        onChange={(source) => set({ source }, 'time source')}
        hint={
          timing.source === 'recordingRate'
            ? t('panels.clock.fileSays', {
                rate:
                  info.playbackRate === null
                    ? t('panels.clock.nothingOfRate')
                    : t('panels.framesPerSecond', { rate: showNumberAt(info.playbackRate, 5) }),
              })
            : t('panels.clock.stampsHint')
        }
      />
      <EstimateField
        label={t('panels.clock.rate')}
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
              t('panels.clock.between'),
              showQuantity(
                {
                  value: clock.value.frameInterval,
                  u: clock.value.frameInterval * clock.value.rateRelativeU,
                },
                'time',
                clock.value.frameInterval < 1e-3 ? 'µs' : 'ms',
              ),
            ],
            [
              t('panels.clock.common'),
              t('panels.clock.inAMillion', {
                number: showNumberAt(clock.value.rateRelativeU * 1e6, 2),
              }),
            ],
          ]}
        />
      )}
      {clock?.ok && clock.value.warnings.map((one) => <WarningBox key={one.code} reason={one} />)}
      <EstimateField
        label={t('panels.clock.exposure')}
        rule={RULES.exposure}
        value={timing.exposure}
        optional
        placeholder="1/50000 s"
        firstU={(exposure) => exposure * 0.05}
        hint={t('panels.clock.exposureHint')}
        onCommit={(exposure) => set({ exposure }, 'exposure')}
      />
      <RollingShutter readout={timing.readout} />
      <LostFrames />
      <RateCheck />
    </Panel>
  );
}
