import { framesOf, placeAmong, ROUNDS } from '../../app/frameStates';
import type { Result } from '../../app/resultTypes';
import { showCount } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Icon } from '../shell/Icon';

/** Goes through the frames of one kind only, with the place among them. */
export function FrameRounds({ result }: { readonly result: Result }) {
  const desk = useDesk();
  const round = desk.round.value;
  const frames = framesOf(round, result);
  const place = placeAmong(frames, desk.session.player.current.value, round !== 'poorestFirst');
  const count = showCount(frames.length);
  return (
    <div class="row frame-rounds">
      <label class="row">
        {t('frames.rounds.goThrough')}
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
              {t(`frames.rounds.${one}`)}
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
          <Icon name="previous" /> {t('frames.rounds.previous')}
        </button>
        <output class="frame-rounds-place">
          {place.index !== null
            ? t('frames.rounds.place', { number: showCount(place.index + 1), all: count })
            : frames.length === 0
              ? t('frames.rounds.none')
              : t('frames.rounds.inAll', { all: count })}
        </output>
        <button type="button" disabled={place.next === null} onClick={() => desk.goRound('next')}>
          {t('frames.rounds.next')} <Icon name="next" />
        </button>
      </div>
    </div>
  );
}
