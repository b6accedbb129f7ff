import { useId, useState } from 'preact/hooks';
import { fieldText, readField } from '../../text/numbers';
import { reasonWords } from '../../text/reasonWords';
import { showNumber } from '../../text/show';
import { language, t } from '../../text/text';
import { useDesk } from '../desk';
import { RULES } from '../fields/rules';
import { Icon } from '../shell/Icon';

/** How fast the film is played, in frames a second, how much slower than the shot that is, and whether it repeats. */
export function PlayRate() {
  const { player, readings, measuring } = useDesk().session;
  const [wrong, setWrong] = useState<string | null>(null);
  const wrongId = useId();
  const rate = player.rate.value;
  const clock = readings.clock.value;
  const text = () => fieldText(player.rate.value, 'rate', '/s', language.value).replace(' /s', '');
  const slower = clock?.ok ? 1 / (clock.value.frameInterval * rate) : null;
  const known = measuring.positions.value.some((one) => one.used);
  return (
    <>
      <label class="row play-rate">
        {t('stage.rate.playAt')}
        <input
          type="text"
          inputMode="decimal"
          value={text()}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : wrongId}
          onInput={(event) => {
            const typed = readField(event.currentTarget.value, RULES.playRate, language.value);
            setWrong(typed.ok ? null : reasonWords(typed.reason).message);
            if (typed.ok) player.setRate(typed.value);
          }}
          onChange={(event) => {
            setWrong(null);
            event.currentTarget.value = text();
          }}
        />
        {t('stage.rate.unit')}
      </label>
      {wrong === null ? (
        <span class="muted">
          {slower !== null &&
            slower >= 1.05 &&
            t('stage.rate.slower', { number: showNumber(slower, 2) })}
        </span>
      ) : (
        <span id={wrongId} role="alert" class="play-wrong">
          {wrong}
        </span>
      )}
      <button
        type="button"
        aria-pressed={player.repeats.value}
        title={t(known ? 'stage.rate.repeatPassage' : 'stage.rate.repeatFilm')}
        onClick={() => {
          player.repeats.value = !player.repeats.value;
        }}
      >
        <Icon name="repeat" /> {t('stage.rate.repeat')}
      </button>
    </>
  );
}
