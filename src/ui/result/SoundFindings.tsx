import type { Result } from '../../app/resultTypes';
import { isAvailable, type Reported } from '../../core/estimate';
import { formatQuantity } from '../../core/format';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { expanded, Finding, Reading } from './Reading';
import { percent } from './words';

/** From here on a difference of times is stated in milliseconds, s. */
const LONG_S = 0.001;

/** What the sound track tells beside the film. */
export function SoundFindings({ sound }: { readonly sound: NonNullable<Result['sound']> }) {
  const unit = useDesk().preferences.speedUnit.value;
  if ('unavailable' in sound) {
    return (
      <div>
        <dt>Sound</dt>
        <dd data-role="sound" class="muted">
          <ReasonText reason={sound.unavailable} />
        </dd>
      </div>
    );
  }
  return (
    <>
      <div>
        <dt>Burst heard</dt>
        <dd data-role="burst-heard">
          <Reading reported={sound.burst} kind="time" unit="ms" />
          {isAvailable(sound.burst) && (
            <AgainstFilm minusFilm={sound.minusFilm} agrees={sound.agrees} />
          )}
        </dd>
      </div>
      <Finding
        name="Impact on the backstop heard"
        mark="impact-heard"
        reported={sound.impact}
        kind="time"
        unit="ms"
      />
      <Finding
        name="Mean speed to the backstop"
        mark="mean-speed"
        reported={sound.meanSpeed}
        kind="speed"
        unit={unit}
      />
    </>
  );
}

function AgainstFilm(props: { readonly minusFilm: Reported; readonly agrees: boolean | null }) {
  const { minusFilm, agrees } = props;
  if (!isAvailable(minusFilm)) {
    return (
      <div class="muted">
        <ReasonText reason={minusFilm.unavailable} />
      </div>
    );
  }
  const { value, u } = expanded(minusFilm, minusFilm.value < 0 ? -1 : 1);
  const apart = formatQuantity({ value, u }, 'time', Math.max(value, u) < LONG_S ? 'µs' : 'ms');
  const side = `${apart} ${minusFilm.value < 0 ? 'before' : 'after'} the burst seen on the film (${percent(minusFilm.coverage)})`;
  return (
    <p>
      {agrees === false ? (
        <span class="disagrees">
          It does not agree with the film: heard {side}. Check the offset between sound and picture
          and the distance of the microphone.
        </span>
      ) : (
        <>
          {agrees === true && 'It agrees with the film: '}
          {agrees === true ? 'heard' : 'Heard'} {side}.
        </>
      )}
    </p>
  );
}
