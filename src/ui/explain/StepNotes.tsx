import type { StepName } from '../../app/draft';
import { centreFrame, type OwnNumbers } from '../../app/ownNumbers';
import { sourceWords } from '../../text/names';
import { showFixed, showNumber, showPercent, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Facts } from '../panels/Facts';

/** Contributions shown one by one; the rest together. */
const MOST_PARTS = 5;

/** What only some shots have to be told beside the formula, and what the uncertainty is made of. */
export function StepNotes(props: { readonly step: StepName; readonly numbers: OwnNumbers }) {
  const { step, numbers } = props;
  const { session, preferences } = useDesk();
  const draft = session.shots.draft.value;
  const result = session.measuring.reduction.value?.result ?? null;
  const speed =
    numbers.exitVelocity &&
    showQuantity(numbers.exitVelocity, 'speed', preferences.speedUnit.value);
  switch (step) {
    case 'footage':
      return <p>{t('explain.note.footage')}</p>;
    case 'clock': {
      const { interval } = numbers;
      return (
        <>
          {interval !== null && (
            <p>{t('explain.note.clock', { share: shareText(interval.u / interval.value) })}</p>
          )}
          <Lines />
        </>
      );
    }
    case 'scale':
      return <ScaleNotes />;
    case 'ball': {
      const frame = centreFrame(result);
      return frame === null ? null : <p>{t('explain.note.ball', { frame: `${frame}` })}</p>;
    }
    case 'seal': {
      const r = result?.burstExitCorrelation ?? null;
      return r === null ? null : <p>{t('explain.note.seal', { r: showFixed(r, 2) })}</p>;
    }
    case 'result':
      return (
        <>
          {speed !== null && <p>{t('explain.note.result', { speed })}</p>}
          <SpeedParts />
        </>
      );
    case 'models': {
      const { exitVelocity, mostSpeed } = numbers;
      if (draft === null || exitVelocity === null || mostSpeed === null || speed === null)
        return null;
      const share = showPercent(Math.round((100 * exitVelocity.value) / mostSpeed.value) / 100);
      return <p>{t('explain.note.models', { speed, share })}</p>;
    }
  }
}

/** A share as small as a clock's: in a million. */
const shareText = (share: number): string =>
  t('panels.clock.inAMillion', { number: showNumber(share * 1e6, 2) });

/** How much later a rolling shutter reads its last line. */
function Lines() {
  const { films, shots } = useDesk().session;
  const info = films.film.value?.info;
  const readout = shots.draft.value?.timing.readout;
  if (info === undefined || readout === undefined || readout.lineTime.value === 0) return null;
  const { lineTime, direction } = readout;
  const count = direction === 'left' || direction === 'right' ? info.width : info.height;
  const whole = { value: lineTime.value * (count - 1), u: lineTime.u * (count - 1) };
  return (
    <p>
      {t('explain.note.lines', {
        line: showQuantity(lineTime, 'time', 'µs'),
        whole: showQuantity(whole, 'time', 'ms'),
      })}
    </p>
  );
}

function ScaleNotes() {
  const { readings, shots } = useDesk().session;
  const reading = readings.scale.value;
  if (!reading?.ok) return null;
  const { value, u, sources, lengths } = reading.value;
  const inScale = (one: number) =>
    `${showNumber(one * value * 1e3, 2)} mm/px (${showPercent(Number((100 * one).toPrecision(2)) / 100)})`;
  return (
    <>
      {shots.draft.value?.scale.plane != null && <p>{t('explain.note.plane')}</p>}
      {lengths.length > 1 && (
        <p>
          {t('explain.note.lengths', {
            count: `${lengths.length}`,
            scale: `${showQuantity({ value, u }, 'length', 'mm')}/px`,
          })}
        </p>
      )}
      <p>{t('explain.parts.scale', { u: inScale(u / value) })}</p>
      <Facts
        facts={[...sources]
          .sort((a, b) => b.u - a.u)
          .map((one) => [sourceWords(one.source), inScale(one.u)])}
      />
    </>
  );
}

function SpeedParts() {
  const { measuring } = useDesk().session;
  const { speedUnit } = useDesk().preferences;
  const result = measuring.reduction.value?.result;
  if (result === undefined || !('value' in result.exitVelocity)) return null;
  const inSpeed = (u: number) =>
    showQuantity({ value: u, u: u / 10 }, 'speed', speedUnit.value, false);
  const parts = [...result.budget.exitVelocity].sort((a, b) => b.contribution - a.contribution);
  const rest = Math.hypot(...parts.slice(MOST_PARTS).map((one) => one.contribution));
  return (
    <>
      <p>{t('explain.parts.result', { u: inSpeed(result.exitVelocity.u) })}</p>
      <Facts
        facts={[
          ...parts
            .slice(0, MOST_PARTS)
            .map((one) => [sourceWords(one.source), inSpeed(one.contribution)] as const),
          ...(rest > 0 ? [[t('explain.parts.rest'), inSpeed(rest)] as const] : []),
        ]}
      />
    </>
  );
}
