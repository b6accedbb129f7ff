import { readField } from '../../text/numbers';
import { showFixed } from '../../text/show';
import { language, t } from '../../text/text';
import { useDesk } from '../desk';
import { RULES } from '../fields/rules';
import { Icon } from '../shell/Icon';
import { FilmRibbon } from './FilmRibbon';
import { instantsOnFrames } from './overlays';
import { PlayRate } from './PlayRate';

/** Which frame is shown: step, play, slide over the film in small pictures, or type its number. */
export function FrameControls() {
  const desk = useDesk();
  const { player, readings } = desk.session;
  const frame = player.current.value;
  const last = Math.max(0, player.frameCount.value - 1);
  const clock = readings.clock.value;
  const time = clock?.ok ? clock.value.frameTime(frame) : null;
  const none = player.frameCount.value === 0;
  return (
    <div class="frame-controls">
      <FilmRibbon instants={instantsOnFrames(desk.session)} />
      <div class="row frame-steps">
        <StepButton by={-10} />
        <StepButton by={-1} />
        <button
          type="button"
          class="play"
          disabled={none}
          onClick={() => (player.playing.value ? player.pause() : player.play())}
        >
          <Icon name={player.playing.value ? 'pause' : 'play'} />
          {t(player.playing.value ? 'stage.controls.pause' : 'stage.controls.play')}
        </button>
        <StepButton by={1} />
        <StepButton by={10} />
      </div>
      <div class="row frame-settings">
        <PlayRate />
        <label class="row frame-number">
          {t('stage.controls.frame')}
          <input
            type="text"
            inputMode="numeric"
            value={frame}
            disabled={none}
            onChange={(event) => {
              const rule = { ...RULES.frame, max: last };
              const typed = readField(event.currentTarget.value, rule, language.value);
              if (typed.ok) desk.pick(typed.value);
              else event.currentTarget.value = String(player.current.value);
            }}
          />
          {t('stage.controls.ofLast', { last })}
        </label>
        <span class="frame-time">{time === null ? '' : `${showFixed(time * 1000, 4)} ms`}</span>
      </div>
    </div>
  );
}

function StepButton({ by }: { readonly by: number }) {
  const { player } = useDesk().session;
  const size = Math.abs(by);
  return (
    <button
      type="button"
      disabled={player.frameCount.value === 0}
      aria-label={t(by < 0 ? 'stage.controls.back' : 'stage.controls.on', { n: size })}
      onClick={() => void player.step(by)}
    >
      {by < 0 && <Icon name="previous" />}
      {size}
      {by > 0 && <Icon name="next" />}
    </button>
  );
}
