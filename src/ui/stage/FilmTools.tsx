import type { FlightChoice } from '../../app/flightFrames';
import { useDesk } from '../desk';
import { signed } from '../film/PixelNumbers';
import { Icon } from '../shell/Icon';
import type { Showing } from './look';

const SHOWINGS: readonly (readonly [Showing, string])[] = [
  ['filmed', 'the film'],
  ['change', 'what changed'],
  ['between', 'change between two'],
  ['flight', 'the whole flight'],
];

/** How the film is looked at: what is shown, its greys, a magnifier, a second frame. */
export function FilmTools() {
  const desk = useDesk();
  const { look } = desk;
  const { player } = desk.session;
  const none = player.shown.value === null;
  const showing = look.showing.value;
  const held = look.held.value;
  return (
    <fieldset class="row film-tools" aria-label="How the film is shown">
      <label class="row">
        Show
        <select
          value={showing}
          disabled={none}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            const next = SHOWINGS.find(([kind]) => kind === chosen)?.[0];
            if (next !== undefined) look.show(next);
          }}
        >
          {SHOWINGS.map(([kind, text]) => (
            <option key={kind} value={kind} disabled={kind === 'between' && held === null}>
              {text}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        aria-pressed={look.greys.value !== null}
        disabled={none}
        title="Shows the darkest grey of this frame as black and the brightest as white, in all frames; the numbers stay."
        onClick={() => look.stretch(look.greys.value === null)}
      >
        Stretch greys
      </button>
      <button
        type="button"
        aria-pressed={look.magnified.value}
        disabled={none}
        title="Enlarges what is under the pointer, with its grey values."
        onClick={() => {
          look.magnified.value = !look.magnified.value;
        }}
      >
        <Icon name="magnify" /> Magnifier
      </button>
      <button
        type="button"
        aria-pressed={held !== null}
        disabled={none}
        title="Keeps this frame on screen beside the one you go on to."
        onClick={() => look.hold(held === null)}
      >
        <Icon name="pair" /> Two frames
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
      x {x}, y {y}: grey {grey}
      {change !== null && `, change ${signed(change)}`}
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
        <Progress doing="Putting the flight together" work={flight} before={still} />
      </>
    );
  }
  if (showing === 'change') return <Progress doing="Reading the still scene" work={still} />;
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
        aria-valuetext={`grey ${Math.round(greys[which])}`}
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
      {end('Black at', 'low')}
      {end('White at', 'high')}
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
        Frames
        <select
          value={choice.frames}
          onChange={(event) => {
            const frames: FlightChoice['frames'] =
              event.currentTarget.value === 'all' ? 'all' : 'apart';
            look.choose({ ...choice, frames });
          }}
        >
          <option value="apart">{known ? 'ball beside ball' : 'some 40, evenly'}</option>
          <option value="all">all</option>
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
          fragments too
        </label>
      ) : (
        <span class="muted">No ball is measured yet: everything that moves is shown.</span>
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
    return (
      <p class="film-tools-more" role="alert">
        {now.reason.message} {now.reason.remedy}
      </p>
    );
  }
  if (now.kind !== 'running') return null;
  const doing = now === first ? 'Reading the still scene' : props.doing;
  return (
    <div class="row film-tools-more" role="status">
      <span>
        {doing}: {Math.round(now.share * 100)} %
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
        Cancel
      </button>
    </div>
  );
}
