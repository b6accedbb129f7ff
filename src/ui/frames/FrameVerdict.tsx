import type { InspectionState } from '../../app/inspecting';
import type { Position } from '../../app/resultTypes';
import type { Reason } from '../../core/reason';
import type { TextKey } from '../../text/catalogue';
import { reasonWords } from '../../text/reasonWords';
import { t } from '../../text/text';
import { Icon } from '../shell/Icon';

type RemedyKey = Extract<TextKey, `frames.verdict.remedy.${string}`>;

/** What a person can do about a frame whose reason itself does not say. */
const REMEDIES: Readonly<Record<string, RemedyKey>> = {
  rejectedByHand: 'frames.verdict.remedy.takenBack',
  beforeExit: 'frames.verdict.remedy.freeFlight',
  outlier: 'frames.verdict.remedy.outline',
  offPath: 'frames.verdict.remedy.outline',
  ballBroke: 'frames.verdict.remedy.broken',
};

/** Whether the frame counts, and if not why and what to do. */
export function FrameVerdict(props: {
  readonly frame: number;
  readonly position: Position | null;
  readonly inspection: InspectionState;
  /** Whether the ball was found in any frame. */
  readonly anyFound: boolean;
}) {
  const { frame, position, inspection, anyFound } = props;
  if (position === null) {
    return (
      <div class="verdict">
        <h3>{t(anyFound ? 'frames.verdict.notLookedFor' : 'frames.verdict.noBall', { frame })}</h3>
        <p>
          {t(anyFound ? 'frames.verdict.notThrough' : 'frames.verdict.nothingTaken')}{' '}
          {t('frames.verdict.ifThere')}
        </p>
      </div>
    );
  }
  if (position.used) {
    return (
      <div class="verdict verdict-used">
        <h3>
          <Icon name="done" />{' '}
          {t(position.manual ? 'frames.verdict.usedByHand' : 'frames.verdict.used', { frame })}
        </h3>
        {inspection.kind === 'failed' && <Refusal reason={inspection.reason} />}
      </div>
    );
  }
  return (
    <div class="verdict verdict-refused" data-code={position.why?.code}>
      <h3>
        <Icon name="needsYou" /> {t('frames.verdict.leftOut', { frame })}
      </h3>
      <Refusal
        reason={position.why ?? { code: 'leftOut', message: t('frames.verdict.leftOutWhy') }}
      />
      {inspection.kind === 'failed' && <Refusal reason={inspection.reason} />}
    </div>
  );
}

function Refusal({ reason }: { readonly reason: Reason }) {
  const { message, remedy } = reasonWords(reason);
  return (
    <p>
      {message}{' '}
      <span class="remedy">
        {remedy ?? t(REMEDIES[reason.code] ?? 'frames.verdict.remedy.any')}
      </span>
    </p>
  );
}
