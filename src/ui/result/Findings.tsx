import type { ComponentChildren } from 'preact';
import type { Result } from '../../app/resultTypes';
import { isAvailable, type Reported } from '../../core/estimate';
import { formatCount, formatNumber, formatQuantity, quantityParts } from '../../core/format';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { FlightFindings } from './FlightFindings';
import { expanded } from './Reading';
import { SoundFindings } from './SoundFindings';
import { percent } from './words';

/** What else the film tells: direction, energy and drag, target, sound, the speed from the blur alone, rotation, a broken ball, other things that flew. */
export function Findings({ result }: { readonly result: Result }) {
  const { breakUp, rivals } = result;
  return (
    <section class="stack findings" aria-label="What else the film tells">
      {breakUp !== null && (
        <div class="notice notice-warning" data-code={breakUp.reason.code}>
          <ReasonText reason={breakUp.reason} />
          <div class="row">
            <FrameLink frame={breakUp.frame}>
              From frame {breakUp.frame} on the ball is no longer whole
            </FrameLink>
          </div>
        </div>
      )}
      <h3>What else the film tells</h3>
      <dl class="findings-list">
        <FlightFindings flight={result.flight} />
        {result.sound !== null && <SoundFindings sound={result.sound} />}
        <div>
          <dt>Speed from the blur alone</dt>
          <dd data-role="streak-speed">
            <StreakSpeed streak={result.streak} />
          </dd>
        </div>
        <div>
          <dt>Rotation</dt>
          <dd data-role="spin">
            <Spin spin={result.spin} />
          </dd>
        </div>
        <div>
          <dt>Shake</dt>
          <dd data-role="shake">{shakeWords(result.shake)}</dd>
        </div>
        {rivals.length > 0 && (
          <div>
            <dt>Not the ball</dt>
            <dd>
              <ul class="rivals">
                {rivals.map(({ frames, reason }) => (
                  <li key={`${reason.code}${reason.message}${frames}`}>
                    Seen in {formatCount(frames)} {frames === 1 ? 'frame' : 'frames'}:{' '}
                    {reason.message}
                  </li>
                ))}
              </ul>
            </dd>
          </div>
        )}
      </dl>
    </section>
  );
}

function FrameLink(props: { readonly frame: number; readonly children: ComponentChildren }) {
  const desk = useDesk();
  return (
    <button type="button" onClick={() => desk.pick(props.frame)}>
      {props.children}
    </button>
  );
}

/** An independent check: nothing of the positions goes into it. */
function StreakSpeed({ streak }: { readonly streak: Result['streak'] }) {
  const unit = useDesk().preferences.speedUnit.value;
  if (!('speed' in streak)) return <ReasonText reason={streak.unavailable} />;
  const { speed, minusFit, agrees, frames } = streak;
  const { value, u } = expanded(minusFit);
  const apart = formatQuantity({ value: Math.abs(value), u }, 'speed', unit);
  const side = `${apart} ${value < 0 ? 'slower' : 'faster'} over the same frames`;
  return (
    <p>
      The blur alone gives <strong>{formatQuantity(expanded(speed), 'speed', unit)}</strong> (
      {percent(speed.coverage)}, {formatCount(frames)} {frames === 1 ? 'frame' : 'frames'}).{' '}
      {agrees ? (
        <>It agrees with the fit: {side}.</>
      ) : (
        <span class="disagrees">
          It does not agree with the fit: {side}. Check the exposure and the recording rate.
        </span>
      )}
    </p>
  );
}

function Spin({ spin }: { readonly spin: Reported }) {
  if (!isAvailable(spin)) return <ReasonText reason={spin.unavailable} />;
  const way = spin.value >= 0 ? 'clockwise' : 'anticlockwise';
  const size = { value: Math.abs(spin.value), u: expanded(spin).u };
  const turns = { value: size.value / (2 * Math.PI), u: size.u / (2 * Math.PI) };
  return (
    <p>
      <strong>{stated(size)} rad/s</strong> ({percent(spin.coverage)}): {stated(turns)} turns a
      second, {way} as seen.
    </p>
  );
}

function stated(estimate: { readonly value: number; readonly u: number }): string {
  const parts = quantityParts(estimate);
  if (parts === null) return '';
  const { value, u, exponent } = parts;
  if (u === '') return `${value}${exponent}`;
  return exponent === '' ? `${value} ± ${u}` : `(${value} ± ${u})${exponent}`;
}

function shakeWords(shake: Result['shake']): string {
  if (shake === null) {
    return 'The still scene holds too little detail to tell whether camera or launcher moved.';
  }
  const { rms, most, u } = shake;
  if (most <= 2 * u) return `The scene stood still within ${formatNumber(2 * u, 2)} px.`;
  return `The scene moved by ${formatNumber(rms, 2)} px (root mean square), at most ${formatNumber(most, 2)} px, each known to ${formatNumber(u, 2)} px; it was taken off the positions.`;
}
