import { removeSeed, setSeeds } from '../../app/edits';
import { useDesk } from '../desk';
import { Group, ToolButton } from './Panel';

/** Where a person says the ball is, for the search to start from. */
export function SeedsGroup() {
  const desk = useDesk();
  const { shots, streak: image } = desk.session;
  const seeds = shots.draft.value?.edits.seeds ?? [];
  const held = desk.mode.value.kind === 'seed';
  const streak = image.value.line !== null;
  return (
    <Group title="The ball is here">
      <p class="muted">
        Only needed where something else was followed, or nothing. The search then keeps to these
        places; the centres are still measured.
      </p>
      <div class="row">
        <ToolButton mode={{ kind: 'seed' }}>Show where the ball is</ToolButton>
        {seeds.length > 1 && (
          <button
            type="button"
            onClick={() => shots.edit(setSeeds([]), { label: 'places of the ball removed' })}
          >
            Remove all
          </button>
        )}
      </div>
      {held && (
        <p class="muted" role="status">
          Click the ball on the film
          {streak
            ? ', or draw a slanted line along its band in the streak image: its two ends say where the ball is.'
            : '. Once the streak image is there, a slanted line along the ball’s band in it does the same.'}
        </p>
      )}
      {seeds.length > 0 && (
        <ul class="seeds">
          {seeds.map(({ frame, x, y }) => (
            <li key={frame} class="row">
              <button type="button" class="plain" onClick={() => desk.pick(frame)}>
                Frame {frame}
              </button>
              <span class="seed-place">
                x {x.toFixed(1)}, y {y.toFixed(1)} px
              </span>
              <button
                type="button"
                aria-label={`Remove the place in frame ${frame}`}
                onClick={() =>
                  shots.edit(removeSeed(frame), { label: `place in frame ${frame} removed` })
                }
              >
                Remove
              </button>
            </li>
          ))}
        </ul>
      )}
    </Group>
  );
}
