import { framesOf, placeAmong, ROUNDS, type Round } from '../../app/frameStates';
import type { Result } from '../../app/resultTypes';
import { formatCount } from '../../core/format';
import { useDesk } from '../desk';
import { Icon } from '../shell/Icon';

const ROUND_WORDS: Readonly<Record<Round, string>> = {
  leftOut: 'Frames left out',
  poorestFirst: 'Used frames, poorest fit first',
  looked: 'All frames of the flight',
};

/** Goes through the frames of one kind only, with the place among them. */
export function FrameRounds({ result }: { readonly result: Result }) {
  const desk = useDesk();
  const round = desk.round.value;
  const frames = framesOf(round, result);
  const place = placeAmong(frames, desk.session.player.current.value, round !== 'poorestFirst');
  const count = formatCount(frames.length);
  return (
    <div class="row frame-rounds">
      <label class="row">
        Go through
        <select
          value={round}
          onChange={(event) => {
            const chosen = ROUNDS.find((one) => one === event.currentTarget.value);
            if (chosen === undefined) return;
            desk.round.value = chosen;
            desk.goRound('first');
          }}
        >
          {ROUNDS.map((one) => (
            <option key={one} value={one}>
              {ROUND_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <div class="row frame-rounds-steps">
        <button
          type="button"
          disabled={place.previous === null}
          onClick={() => desk.goRound('previous')}
        >
          <Icon name="previous" /> Previous
        </button>
        <output class="frame-rounds-place">
          {place.index !== null
            ? `${formatCount(place.index + 1)} of ${count}`
            : frames.length === 0
              ? 'none'
              : `${count} in all`}
        </output>
        <button type="button" disabled={place.next === null} onClick={() => desk.goRound('next')}>
          Next <Icon name="next" />
        </button>
      </div>
    </div>
  );
}
