import { useId, useState } from 'preact/hooks';
import { formatNumber } from '../../core/format';
import { parseQuantity, quantityText } from '../../core/quantityText';
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
  const slower = clock?.ok ? 1 / (clock.value.frameInterval * rate) : null;
  const known = measuring.positions.value.some((one) => one.used);
  return (
    <>
      <label class="row play-rate">
        Play at
        <input
          type="text"
          inputMode="decimal"
          value={quantityText(rate, 'rate', '/s').replace(' /s', '')}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : wrongId}
          onInput={(event) => {
            const typed = parseQuantity(event.currentTarget.value, RULES.playRate);
            setWrong(typed.ok ? null : typed.reason.message);
            if (typed.ok) player.setRate(typed.value);
          }}
          onChange={(event) => {
            setWrong(null);
            event.currentTarget.value = String(player.rate.value);
          }}
        />
        frames/s
      </label>
      {wrong === null ? (
        <span class="muted">
          {slower === null || slower < 1.05 ? '' : `${formatNumber(slower, 2)}× slower`}
        </span>
      ) : (
        <span id={wrongId} role="alert" class="play-wrong">
          {wrong}
        </span>
      )}
      <button
        type="button"
        aria-pressed={player.repeats.value}
        title={
          known
            ? 'Plays the ball’s passage again and again.'
            : 'Plays the film again and again; once it is measured, the ball’s passage.'
        }
        onClick={() => {
          player.repeats.value = !player.repeats.value;
        }}
      >
        <Icon name="repeat" /> Repeat
      </button>
    </>
  );
}
