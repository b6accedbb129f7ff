import type { InspectionState } from '../../app/inspecting';
import type { Position } from '../../app/resultTypes';
import type { Reason } from '../../core/reason';
import { Icon } from '../shell/Icon';

/** What a person can do about a frame whose reason itself does not say. */
const REMEDIES: Readonly<Record<string, string>> = {
  rejectedByHand: 'Use it again if it was taken out by mistake.',
  beforeExit: 'Nothing needs to be done: only free flight counts.',
  outlier: 'Look at the outline: correct the centre where it is off, or leave the frame out.',
  offPath: 'Look at the outline: correct the centre where it is off, or leave the frame out.',
  ballBroke: 'Nothing needs to be done: a broken ball is not measured.',
};
const ANY_REMEDY = 'Place the centre by hand if you can see the ball, or leave the frame out.';

/** Whether the frame counts, and if not why and what to do. */
export function FrameVerdict(props: {
  readonly frame: number;
  readonly position: Position | null;
  readonly inspection: InspectionState;
  /** Whether the ball was found in any frame. */
  readonly anyFound: boolean;
}) {
  const { frame, position, inspection, anyFound } = props;
  const title = `Frame ${frame}`;
  if (position === null) {
    return (
      <div class="verdict">
        <h3>
          {title}: {anyFound ? 'the ball was not looked for' : 'no ball was found'}
        </h3>
        <p>
          {anyFound
            ? 'The path found does not lead through this frame.'
            : 'Nothing in the film was taken for the ball.'}{' '}
          If it is in this frame, place the centre by hand on the film, or show in the Ball step
          where it is and measure again.
        </p>
      </div>
    );
  }
  if (position.used) {
    return (
      <div class="verdict verdict-used">
        <h3>
          <Icon name="done" /> {title}: used{position.manual && ', placed by hand'}
        </h3>
        {inspection.kind === 'failed' && <Refusal reason={inspection.reason} />}
      </div>
    );
  }
  return (
    <div class="verdict verdict-refused" data-code={position.why?.code}>
      <h3>
        <Icon name="needsYou" /> {title}: left out
      </h3>
      <Refusal reason={position.why ?? { code: 'leftOut', message: 'It was left out.' }} />
      {inspection.kind === 'failed' && <Refusal reason={inspection.reason} />}
    </div>
  );
}

function Refusal({ reason }: { readonly reason: Reason }) {
  return (
    <p>
      {reason.message}{' '}
      <span class="remedy">{reason.remedy ?? REMEDIES[reason.code] ?? ANY_REMEDY}</span>
    </p>
  );
}
