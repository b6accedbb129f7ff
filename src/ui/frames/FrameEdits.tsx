import { removePoint, setPointU } from '../../app/edits';
import { isRejected } from '../../app/frameStates';
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
          {placed === undefined ? 'Correct the centre' : 'Move the centre'}
        </ToolButton>
        <button type="button" aria-pressed={rejected} onClick={() => rejectFrame(desk, frame)}>
          {rejected ? 'Use this frame again' : 'Reject this frame'}
        </button>
        {placed !== undefined && (
          <button
            type="button"
            onClick={() =>
              shots.edit(removePoint(frame), { label: `hand-placed centre ${frame} removed` })
            }
          >
            Back to the measured centre
          </button>
        )}
        {undoLabel !== null && (
          <button type="button" class="plain" onClick={shots.undo}>
            <Icon name="undo" /> Undo: {undoLabel}
          </button>
        )}
      </div>
      {desk.mode.value.kind === 'point' && (
        <p class="muted">
          Drag the mark or click the picture. Arrow keys move it by 0.1 px, with Shift by 1 px, with
          Alt by 0.01 px.
        </p>
      )}
      {placed !== undefined && (
        <div class="pair">
          <QuantityField
            label="u of x by hand"
            rule={RULES.placingU}
            value={placed.ux}
            onCommit={(ux) => ux !== null && setU({ ux })}
          />
          <QuantityField
            label="u of y by hand"
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
    shots.edit(setPointU(frame, u), { label: `uncertainty of the centre in frame ${frame}` });
  }
}
