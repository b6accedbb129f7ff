import type { Result } from '../../app/resultTypes';
import { isAvailable, type Reported } from '../../core/estimate';
import { formatInterval, formatNumber, formatQuantity } from '../../core/format';
import { fromSi, unitOf } from '../../core/unitTable';
import { useDesk } from '../desk';
import { ReasonText, WarningBox } from '../shell/Notices';
import { Findings } from './Findings';
import { expanded } from './Reading';
import { percent } from './words';

/** From here on a time is stated in milliseconds, s. */
const LONG_S = 0.001;

/** The result in words and numbers. */
export function Statement({ result }: { readonly result: Result }) {
  const unit = useDesk().preferences.speedUnit.value;
  const { exitVelocity, exitTime, sealBurst, lead, contactLead } = result;
  return (
    <div class="statement stack">
      {isAvailable(exitVelocity) ? (
        <div>
          <p class="headline" data-role="exit-velocity">
            v = {formatQuantity(expanded(exitVelocity), 'speed', unit)}{' '}
            <span class="coverage">({percent(exitVelocity.coverage)})</span>
          </p>
          <p class="muted">
            Speed of the ball's centre along the flight as it crosses the muzzle plane; interval{' '}
            {formatInterval(exitVelocity.interval, exitVelocity.u, 'speed', unit)}, standard
            uncertainty {formatStandard(exitVelocity.u, unit)}
            {exitVelocity.dof !== null &&
              `, ${Math.round(exitVelocity.dof)} effective degrees of freedom`}
            .
          </p>
        </div>
      ) : (
        <Missing what="No exit velocity" reported={exitVelocity} />
      )}
      {isAvailable(lead) ? (
        <p class="headline-2" data-role="lead">
          The seal opened <strong>{duration(lead)}</strong> {lead.value >= 0 ? 'before' : 'after'}{' '}
          the ball's centre left.
        </p>
      ) : (
        sameReason(lead, exitVelocity) || <Missing what="No lead of the seal" reported={lead} />
      )}
      <dl class="facts">
        <Moment name="Seal opened at" reported={sealBurst} told={lead} />
        <Moment name="Centre left at" reported={exitTime} told={exitVelocity} />
        {isAvailable(contactLead) && (
          <div>
            <dt>Leading point at the seal</dt>
            <dd>
              {duration(contactLead)} {contactLead.value >= 0 ? 'after' : 'before'} the seal opened
            </dd>
          </div>
        )}
      </dl>
      <Findings result={result} />
      {result.warnings.map((one) => (
        <WarningBox key={`${one.code}${one.message}`} reason={one} />
      ))}
    </div>
  );
}

const formatStandard = (u: number, unit: string) =>
  `${formatNumber(fromSi(u, unitOf('speed', unit)), 2)} ${unit}`;

/** Short times in microseconds, longer ones in milliseconds; without their sign, which the words carry. */
const duration = (quantity: Extract<Reported, { value: number }>) =>
  formatQuantity(
    expanded(quantity, quantity.value < 0 ? -1 : 1),
    'time',
    Math.abs(quantity.value) < LONG_S ? 'µs' : 'ms',
  );

/** `told`: where the same reason already stands. */
function Moment(props: {
  readonly name: string;
  readonly reported: Reported;
  readonly told: Reported;
}) {
  const { name, reported, told } = props;
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {isAvailable(reported)
          ? `${formatQuantity(expanded(reported), 'time', 'ms')} (${percent(reported.coverage)})`
          : sameReason(reported, told)
            ? 'not found'
            : reported.unavailable.message}
      </dd>
    </div>
  );
}

/** One cause is told once. */
const sameReason = (one: Reported, other: Reported) =>
  !isAvailable(one) && !isAvailable(other) && one.unavailable.code === other.unavailable.code;

function Missing(props: { readonly what: string; readonly reported: Reported }) {
  const { what, reported } = props;
  if (isAvailable(reported)) return null;
  return (
    <div class="notice notice-missing" data-code={reported.unavailable.code}>
      <p>{what}:</p>
      <ReasonText reason={reported.unavailable} />
    </div>
  );
}
