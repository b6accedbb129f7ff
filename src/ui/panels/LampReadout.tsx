import { useState } from 'preact/hooks';
import { setTiming } from '../../app/edits';
import type { LampAnswer, LineTimeReport, Shot } from '../../app/resultTypes';
import type { Estimate } from '../../core/estimate';
import type { Reason } from '../../core/reason';
import { reasonWords } from '../../text/reasonWords';
import { showCount, showNumberAt, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { WarningBox } from '../shell/Notices';
import { FileChoice } from './FileChoice';
import { Fold } from './Panel';
import { directionChoices, directionWords } from './readoutWords';
import { WorkState } from './WorkState';

type Direction = Shot['timing']['readout']['direction'];

/** Grids of countries keep their frequency to about this, Hz (common practice, no source). */
const MAINS: Estimate = { value: 50, u: 0.02 };

const CLOCKS = ['recordingRate', 'containerTimestamps'] as const;

/** The line time measured from a clip of a lamp on the mains. */
export function LampReadout() {
  const { calibration, shots } = useDesk().session;
  const timing = shots.draft.value?.timing;
  const [mains, setMains] = useState<Estimate>(MAINS);
  const [clock, setClock] = useState(timing?.source ?? 'containerTimestamps');
  const [assumed, setAssumed] = useState<Direction | 'open'>('open');
  const stated = timing?.recordingRate?.value ?? null;
  const rate = clock === 'recordingRate' ? stated : null;
  const lacksRate = clock === 'recordingRate' && stated === null;
  const { state } = calibration.lamp;
  const running = state.value.kind === 'running';
  return (
    <Fold title={t('panels.lamp.title')} opened={state.value.kind !== 'idle'}>
      <p class="muted">{t('panels.lamp.how')}</p>
      <EstimateField
        label={t('panels.rateCheck.mains')}
        rule={RULES.mains}
        value={mains}
        firstU={() => MAINS.u}
        onCommit={(next) => next !== null && setMains(next)}
      />
      <ChoiceField
        label={t('panels.lamp.clock')}
        value={clock}
        choices={CLOCKS.map((one) => ({ value: one, label: t(`panels.lamp.${one}`) }))}
        onChange={(next) => setClock(next)}
      />
      <ChoiceField
        label={t('panels.lamp.direction')}
        value={assumed}
        choices={[{ value: 'open', label: t('panels.lamp.notKnown') }, ...directionChoices()]}
        hint={t('panels.lamp.directionHint')}
        onChange={(next) => setAssumed(next)}
      />
      {lacksRate && (
        <p class="field-problem" role="alert">
          {t('panels.lamp.lacksRate')}
        </p>
      )}
      <div class="row">
        <FileChoice
          label={t('panels.lamp.file')}
          name="lamp"
          disabled={running || lacksRate}
          onChoose={(files) =>
            void calibration.lamp.measure(files, {
              mains,
              rate,
              assumed: assumed === 'open' ? null : assumed,
            })
          }
        >
          {t('panels.lamp.choose')}
        </FileChoice>
      </div>
      <WorkState
        work={state.value}
        doing={t('panels.lamp.doing')}
        onCancel={calibration.lamp.cancel}
      >
        {(answer) => <LampFound answer={answer} />}
      </WorkState>
    </Fold>
  );
}

function LampFound({ answer: { info, report } }: { readonly answer: LampAnswer }) {
  const { shots, films } = useDesk().session;
  const film = films.film.value?.info;
  if (!report.ok) {
    return (
      <div class="notice notice-problem" role="alert" data-code={report.reason.code}>
        <InFile name={info.name} reason={report.reason} />
      </div>
    );
  }
  const found = report.value;
  const { lineTime, rolls, direction } = found;
  const now = shots.draft.value?.timing.readout;
  // A global shutter has no line time, but it is known no better than measured.
  const taken = rolls ? lineTime : { value: 0, u: lineTime.u };
  const inUse =
    now !== undefined &&
    now.lineTime.value === taken.value &&
    now.lineTime.u === taken.u &&
    (!rolls || now.direction === direction);
  const otherSize =
    film !== undefined && (film.width !== info.width || film.height !== info.height);
  return (
    <>
      <div class="notice notice-information" role="status">
        <p>{readoutWords(found, info)}</p>
        <p class="muted">
          {t('panels.lamp.seen', {
            frames: showCount(found.frames),
            name: info.name,
            percent: showNumberAt(found.contrast * 100, 2),
          })}
        </p>
        <div class="row">
          <button
            type="button"
            disabled={inUse}
            onClick={() =>
              shots.edit(
                setTiming({
                  readout: {
                    direction: rolls ? direction : (now?.direction ?? direction),
                    lineTime: taken,
                  },
                }),
                { label: t('edits.lineTime') },
              )
            }
          >
            {inUse ? t('panels.inUse') : rolls ? t('panels.lamp.use') : t('panels.lamp.useGlobal')}
          </button>
        </div>
      </div>
      {!found.frequencyCheck.agrees && (
        <WarningBox
          reason={{
            code: 'lampOffFrequency',
            message: t('panels.lamp.offFrequency', {
              rate: showQuantity(found.frequencyCheck.measured, 'rate', '/s'),
            }),
            remedy: t('panels.lamp.offFrequencyRemedy'),
          }}
        />
      )}
      {otherSize && (
        <WarningBox
          reason={{
            code: 'lampOtherSize',
            message: t('panels.lamp.otherSize', {
              width: info.width,
              height: info.height,
              filmWidth: film.width,
              filmHeight: film.height,
            }),
            remedy: t('panels.lamp.otherSizeRemedy'),
          }}
        />
      )}
    </>
  );
}

/** A reason that concerns a file, led by its name. */
function InFile({ name, reason }: { readonly name: string; readonly reason: Reason }) {
  const { message, remedy } = reasonWords(reason);
  return (
    <p>
      {t('panels.lamp.inFile', { name, said: message })}
      {remedy !== undefined && <span class="remedy"> {remedy}</span>}
    </p>
  );
}

function readoutWords(
  { rolls, lineTime, direction, directionAssumed }: LineTimeReport,
  { width, height }: { readonly width: number; readonly height: number },
): string {
  const time = showQuantity(lineTime, 'time', 'µs');
  if (!rolls) {
    return t('panels.lamp.notRolling', { time });
  }
  const lines = direction === 'down' || direction === 'up' ? height : width;
  const whole = { value: lineTime.value * lines, u: lineTime.u * lines };
  return t('panels.lamp.rolls', {
    direction: directionWords(direction),
    assumed: directionAssumed ? 'yes' : 'no',
    time,
    whole: showQuantity(whole, 'time', 'ms'),
    lines: showCount(lines),
  });
}
