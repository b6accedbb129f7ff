import type { FlightChoice } from '../../app/flightFrames';
import { reasonWords } from '../../text/reasonWords';
import { showNumberAt } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { signed } from '../film/PixelNumbers';
import { Icon } from '../shell/Icon';
import type { Showing } from './look';

const SHOWINGS: readonly Showing[] = ['filmed', 'change', 'between', 'flight'];

/** How the film is looked at: what is shown, its greys, a magnifier, a second frame. */
export function FilmTools() {
  const desk = useDesk();
  const { look } = desk;
  const { player } = desk.session;
  const none = player.shown.value === null;
  const showing = look.showing.value;
  const held = look.held.value;
  return (
    <fieldset class="row film-tools" aria-label={t('stage.tools.label')}>
      <label class="row">
        {t('stage.tools.show')}
        <select
          value={showing}
          disabled={none}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            const next = SHOWINGS.find((kind) => kind === chosen);
            if (next !== undefined) look.show(next);
          }}
        >
          {SHOWINGS.map((kind) => (
            <option key={kind} value={kind} disabled={kind === 'between' && held === null}>
              {t(`stage.tools.showing.${kind}`)}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        aria-pressed={look.greys.value !== null}
        disabled={none}
        title={t('stage.tools.stretchTitle')}
        onClick={() => look.stretch(look.greys.value === null)}
      >
        {t('stage.tools.stretch')}
      </button>
      <button
        type="button"
        aria-pressed={look.magnified.value}
        disabled={none}
        title={t('stage.tools.magnifierTitle')}
        onClick={() => {
          look.magnified.value = !look.magnified.value;
        }}
      >
        <Icon name="magnify" /> {t('stage.tools.magnifier')}
      </button>
      <button
        type="button"
        aria-pressed={held !== null}
        disabled={none}
        title={t('stage.tools.twoTitle')}
        onClick={() => look.hold(held === null)}
      >
        <Icon name="pair" /> {t('stage.tools.two')}
      </button>
    </fieldset>
  );
}

/** The pixel pointed at. */
export function PixelTold() {
  const { pixel } = useDesk();
  if (pixel.value === null) return null;
  const { x, y, grey, change } = pixel.value;
  return (
    <output class="pixel-reading">
      {change === null
        ? t('stage.tools.pixel', { x, y, grey })
        : t('stage.tools.pixelChange', { x, y, grey, change: signed(change) })}
    </output>
  );
}

/** What belongs to the picture shown: the window of greys, the flight's choices, work under way or failed. */
export function FilmToolsMore() {
  const { look, session } = useDesk();
  const showing = look.showing.value;
  const { still, flight } = session.scenery;
  if (showing === 'flight') {
    return (
      <>
        <FlightChoices />
        <Progress doing={t('stage.tools.together')} work={flight} before={still} />
      </>
    );
  }
  if (showing === 'change') return <Progress doing={t('stage.tools.still')} work={still} />;
  if (showing === 'filmed' && look.greys.value !== null) return <GreyWindow />;
  return null;
}

function GreyWindow() {
  const { look, session } = useDesk();
  const greys = look.greys.value;
  const white = session.player.shown.value?.white ?? 255;
  if (greys === null) return null;
  const end = (name: string, which: 'low' | 'high') => (
    <label class="row">
      {name}
      <input
        type="range"
        min={0}
        max={white}
        value={greys[which]}
        aria-valuetext={t('stage.tools.grey', { grey: Math.round(greys[which]) })}
        onInput={(event) => {
          const value = event.currentTarget.valueAsNumber;
          look.greys.value =
            which === 'low'
              ? { low: Math.min(value, white - 1), high: Math.max(greys.high, value + 1) }
              : { low: Math.min(greys.low, value - 1), high: Math.max(value, 1) };
        }}
      />
      <output>{Math.round(greys[which])}</output>
    </label>
  );
  return (
    <div class="row film-tools-more">
      {end(t('stage.tools.blackAt'), 'low')}
      {end(t('stage.tools.whiteAt'), 'high')}
    </div>
  );
}

function FlightChoices() {
  const { look, session } = useDesk();
  const choice = look.flight.value;
  const known = session.measuring.positions.value.some((one) => one.used);
  return (
    <div class="row film-tools-more">
      <label class="row">
        {t('stage.tools.frames')}
        <select
          value={choice.frames}
          onChange={(event) => {
            const frames: FlightChoice['frames'] =
              event.currentTarget.value === 'all' ? 'all' : 'apart';
            look.choose({ ...choice, frames });
          }}
        >
          <option value="apart">{t(known ? 'stage.tools.apart' : 'stage.tools.evenly')}</option>
          <option value="all">{t('stage.tools.all')}</option>
        </select>
      </label>
      {known ? (
        <label class="row">
          <input
            type="checkbox"
            checked={choice.what === 'moving'}
            onChange={(event) => {
              const what = event.currentTarget.checked ? 'moving' : 'ball';
              look.choose({ ...choice, what });
            }}
          />
          {t('stage.tools.fragments')}
        </label>
      ) : (
        <span class="muted">{t('stage.tools.noBall')}</span>
      )}
    </div>
  );
}

type Making = ReturnType<typeof useDesk>['session']['scenery']['still' | 'flight'];

/** `before`: work that has to be done first. */
function Progress(props: {
  readonly doing: string;
  readonly work: Pick<Making, 'state' | 'cancel'>;
  readonly before?: Pick<Making, 'state'>;
}) {
  const { look } = useDesk();
  const state = props.work.state.value;
  const first = props.before?.state.value;
  const now = first !== undefined && first.kind !== 'done' ? first : state;
  if (now.kind === 'failed') {
    const { message, remedy } = reasonWords(now.reason);
    return (
      <p class="film-tools-more" role="alert">
        {message} {remedy}
      </p>
    );
  }
  if (now.kind !== 'running') return null;
  const doing = now === first ? t('stage.tools.still') : props.doing;
  return (
    <div class="row film-tools-more" role="status">
      <span>
        {t('panels.progress', { doing, percent: showNumberAt(Math.round(now.share * 100), 3) })}
      </span>
      <progress value={now.share} aria-label={doing} />
      <button
        type="button"
        class="cancel"
        onClick={() => {
          props.work.cancel();
          look.show('filmed');
        }}
      >
        {t('panels.cancel')}
      </button>
    </div>
  );
}
