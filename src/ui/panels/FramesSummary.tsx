import { framesOf, type Round } from '../../app/frameStates';
import { isAvailable } from '../../core/estimate';
import { showCount } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { FRAMES_ID } from '../frames/FramesSection';
import { ReasonText } from '../shell/Notices';

/** How many frames count, and the way to those that do not. */
export function FramesSummary() {
  const desk = useDesk();
  const { measuring } = desk.session;
  const reduction = measuring.reduction.value;
  if (reduction === null || measuring.status.value.kind === 'running') return null;
  const looked = framesOf('looked', reduction.result).length;
  const leftOut = framesOf('leftOut', reduction.result).length;
  if (looked === 0) {
    const { exitVelocity } = reduction.result;
    return (
      <div class="notice notice-missing">
        {isAvailable(exitVelocity) ? (
          <p>{t('panels.frames.none')}</p>
        ) : (
          <ReasonText reason={exitVelocity.unavailable} />
        )}
      </div>
    );
  }
  const round: Round = leftOut > 0 ? 'leftOut' : 'poorestFirst';
  return (
    <div class="next">
      <p>
        {t('panels.frames.used', { used: showCount(looked - leftOut), looked: showCount(looked) })}
      </p>
      <button
        type="button"
        onClick={() => {
          desk.round.value = round;
          desk.goRound('first');
          const heading = document.getElementById(FRAMES_ID);
          heading?.focus({ preventScroll: true });
          heading?.closest('section')?.scrollIntoView({ block: 'start' });
        }}
      >
        {leftOut > 0
          ? t('panels.frames.lookLeftOut', { number: showCount(leftOut) })
          : t('panels.frames.look')}
      </button>
    </div>
  );
}
