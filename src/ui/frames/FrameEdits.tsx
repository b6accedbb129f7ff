import { removePoint, setPointU } from '../../app/edits';
import { isRejected } from '../../app/frameStates';
import { t } from '../../text/text';
import { rejectFrame } from '../actions';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { ToolButton } from '../panels/Panel';
import { Icon } from '../shell/Icon';
import { VelocityChangeWords } from './VelocityChangeWords';

/** A person's say over the frame on the screen. */
export function FrameEdits() {
  const desk = useDesk();
  const { shots, player } = desk.session;
  const draft = shots.draft.value;
  if (draft === null) return null;
  const frame = player.current.value;
  const rejected = isRejected(draft.edits, frame);
  const placed = draft.edits.manualPoints.find((one) => one.frame === frame);
  const undoLabel = shots.undoLabel.value;
  return (
    <div class="stack frame-edits">
      <div class="row">
        <ToolButton mode={{ kind: 'point' }}>
          {t(placed === undefined ? 'frames.edits.correct' : 'frames.edits.move')}
        </ToolButton>
        <button type="button" aria-pressed={rejected} onClick={() => rejectFrame(desk, frame)}>
          {t(rejected ? 'frames.edits.useAgain' : 'frames.edits.reject')}
        </button>
        {placed !== undefined && (
          <button
            type="button"
            onClick={() =>
              shots.edit(removePoint(frame), {
                label: t('edits.centreRemoved', { frame: `${frame}` }),
              })
            }
          >
            {t('frames.edits.back')}
          </button>
        )}
        {undoLabel !== null && (
          <button type="button" class="plain" onClick={shots.undo}>
            <Icon name="undo" /> {t('shell.header.undoWhat', { what: undoLabel })}
          </button>
        )}
      </div>
      {desk.mode.value.kind === 'point' && <p class="muted">{t('frames.edits.how')}</p>}
      {placed !== undefined && (
        <div class="pair">
          <QuantityField
            label={t('frames.edits.ux')}
            rule={RULES.placingU}
            value={placed.ux}
            onCommit={(ux) => ux !== null && setU({ ux })}
          />
          <QuantityField
            label={t('frames.edits.uy')}
            rule={RULES.placingU}
            value={placed.uy}
            onCommit={(uy) => uy !== null && setU({ uy })}
          />
        </div>
      )}
      <VelocityChangeWords />
    </div>
  );

  function setU(u: { readonly ux?: number; readonly uy?: number }) {
    shots.edit(setPointU(frame, u), { label: t('edits.centreU', { frame: `${frame}` }) });
  }
}
