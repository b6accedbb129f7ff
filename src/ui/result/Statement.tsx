import type { Result } from '../../app/resultTypes';
import { isAvailable, type Reported } from '../../core/estimate';
import { leadLine, moments, velocityDetail, velocityNumber } from '../../report/statement';
import { showPercent } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ReasonText, WarningBox } from '../shell/Notices';
import { Findings } from './Findings';
import { LineText } from './LineText';

/** The result in words and numbers. */
export function Statement({ result }: { readonly result: Result }) {
  return (
    <div class="statement stack">
      <MainNumbers result={result} />
      <Findings result={result} />
      {result.warnings.map((one) => (
        <WarningBox key={`${one.code}${one.message}`} reason={one} />
      ))}
    </div>
  );
}

/** Exit velocity, lead, and when either happened; the reason where there is none. */
function MainNumbers({ result }: { readonly result: Result }) {
  const unit = useDesk().preferences.speedUnit.value;
  const { exitVelocity, lead } = result;
  return (
    <>
      {isAvailable(exitVelocity) ? (
        <div>
          <p class="headline" data-role="exit-velocity">
            v = {velocityNumber(exitVelocity, unit)}{' '}
            <span class="coverage">({showPercent(exitVelocity.coverage)})</span>
          </p>
          <p class="muted">{velocityDetail(exitVelocity, unit)}</p>
        </div>
      ) : (
        <Missing what={t('result.noSpeed')} reported={exitVelocity} />
      )}
      {isAvailable(lead) ? (
        <div class="headline-2" data-role="lead">
          <LineText line={leadLine(lead)} />
        </div>
      ) : (
        sameReason(lead, exitVelocity) || <Missing what={t('result.noLead')} reported={lead} />
      )}
      <dl class="facts">
        {moments(result).map(({ name, text }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </>
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
      <p>{what}</p>
      <ReasonText reason={reported.unavailable} />
    </div>
  );
}
