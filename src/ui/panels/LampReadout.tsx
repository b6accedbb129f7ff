import { useState } from 'preact/hooks';
import { setTiming } from '../../app/edits';
import type { LampAnswer, LineTimeReport, Shot } from '../../app/resultTypes';
import type { Estimate } from '../../core/estimate';
import { formatCount, formatQuantity, numberAt } from '../../core/format';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { ReasonText, WarningBox } from '../shell/Notices';
import { FileChoice } from './FileChoice';
import { Fold } from './Panel';
import { directionChoices, directionWords } from './readoutWords';
import { WorkState } from './WorkState';

type Direction = Shot['timing']['readout']['direction'];

/** Grids of countries keep their frequency to about this, Hz (common practice, no source). */
const MAINS: Estimate = { value: 50, u: 0.02 };

const CLOCKS = [
  { value: 'recordingRate', label: 'The recording rate stated above' },
  { value: 'containerTimestamps', label: 'Time stamps in its file' },
] as const;

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
    <Fold title="Measure it from a lamp" opened={state.value.kind !== 'idle'}>
      <p class="muted">
        Film a lamp on the mains, or an evenly lit wall, with the settings of the shot and a short
        exposure. The lamp flickers twice in each period of the mains; a rolling shutter turns that
        into bands across the lines, which drift from frame to frame.
      </p>
      <EstimateField
        label="Mains frequency"
        rule={RULES.mains}
        value={mains}
        firstU={() => MAINS.u}
        onCommit={(next) => next !== null && setMains(next)}
      />
      <ChoiceField
        label="Time in that clip comes from"
        value={clock}
        choices={CLOCKS}
        onChange={(next) => setClock(next)}
      />
      <ChoiceField
        label="Direction of readout"
        value={assumed}
        choices={[{ value: 'open', label: 'not known' }, ...directionChoices()]}
        hint="Taken only where the clip shows it as well either way."
        onChange={(next) => setAssumed(next)}
      />
      {lacksRate && (
        <p class="field-problem" role="alert">
          No recording rate is stated above. State it, or take the time stamps.
        </p>
      )}
      <div class="row">
        <FileChoice
          label="Clip of a lamp"
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
          Choose the clip of the lamp…
        </FileChoice>
      </div>
      <WorkState work={state.value} doing="Reading the lamp" onCancel={calibration.lamp.cancel}>
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
        <ReasonText
          reason={{ ...report.reason, message: `${info.name}: ${report.reason.message}` }}
        />
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
          {formatCount(found.frames)} frames of {info.name}; the flicker is{' '}
          {numberAt(found.contrast * 100, 2)} % of the light.
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
                { label: 'time per line' },
              )
            }
          >
            {inUse ? 'In use' : rolls ? 'Use this line time' : 'Use a global shutter'}
          </button>
        </div>
      </div>
      {!found.frequencyCheck.agrees && (
        <WarningBox
          reason={{
            code: 'lampOffFrequency',
            message: `By the clip's clock the lamp flickers ${formatQuantity(found.frequencyCheck.measured, 'rate', '/s')}, which is not twice the mains frequency.`,
            remedy: "Check the mains frequency and where the clip's time comes from.",
          }}
        />
      )}
      {otherSize && (
        <WarningBox
          reason={{
            code: 'lampOtherSize',
            message: `The lamp was filmed at ${info.width} by ${info.height} pixels, the shot at ${film.width} by ${film.height}; many cameras read lines at another pace then.`,
            remedy: 'Film the lamp with the settings of the shot.',
          }}
        />
      )}
    </>
  );
}

function readoutWords(
  { rolls, lineTime, direction, directionAssumed }: LineTimeReport,
  { width, height }: { readonly width: number; readonly height: number },
): string {
  if (!rolls) {
    return `The shutter is not seen to roll: a line takes ${formatQuantity(lineTime, 'time', 'µs')}, as with a global shutter.`;
  }
  const lines = direction === 'down' || direction === 'up' ? height : width;
  const whole = { value: lineTime.value * lines, u: lineTime.u * lines };
  const assumed = directionAssumed ? ', a direction the clip leaves open and you stated' : '';
  return `Lines are read ${directionWords(direction)}${assumed}, ${formatQuantity(lineTime, 'time', 'µs')} each: ${formatQuantity(whole, 'time', 'ms')} for all ${formatCount(lines)}.`;
}
