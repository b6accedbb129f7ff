import { removePoint, setFrameRejected } from '../../app/edits';
import { useDesk } from '../desk';
import { Group, ToolButton } from './Panel';

/** What was found in the frame on screen, and a person's say over it. */
export function CurrentFrame() {
  const { session } = useDesk();
  const { shots, player, measuring } = session;
  const draft = shots.draft.value;
  if (draft === null) return null;
  const frame = player.current.value;
  const rejected = draft.edits.rejectedFrames.includes(frame);
  const manual = draft.edits.manualPoints.some((one) => one.frame === frame);
  const reduction = measuring.reduction.value;
  const position = reduction?.result.positions.find((one) => one.frame === frame);
  const found =
    position === undefined
      ? reduction === null
        ? 'Nothing measured yet.'
        : 'The ball is not in this frame.'
      : position.x === null || position.y === null
        ? (position.why?.message ?? 'No ball was found here.')
        : `Centre x ${position.x.toFixed(2)}, y ${position.y.toFixed(2)} px. ${
            position.used ? 'Used in the fit.' : (position.why?.message ?? 'Not used.')
          }`;
  return (
    <Group title={`Frame ${frame}`}>
      <p>{found}</p>
      <div class="row">
        <button
          type="button"
          aria-pressed={rejected}
          onClick={() =>
            shots.edit(setFrameRejected(frame, !rejected), {
              label: `frame ${frame} ${rejected ? 'restored' : 'rejected'}`,
            })
          }
        >
          {rejected ? 'Use this frame again' : 'Reject this frame'}
        </button>
        <ToolButton mode={{ kind: 'point' }}>Place the centre by hand</ToolButton>
        {manual && (
          <button
            type="button"
            onClick={() =>
              shots.edit(removePoint(frame), { label: `hand-placed centre ${frame} removed` })
            }
          >
            Remove the hand-placed centre
          </button>
        )}
      </div>
    </Group>
  );
}
