import { STEPS } from '../../app/draft';
import { rejectFrame, undoablesOf } from '../actions';
import { type Desk, INSPECT } from '../desk';

/** What the keyboard does, in the order of the help panel, whose words are `shell.keys`; `handleKey` below does it. */
export const KEYS = [
  'play',
  'step',
  'stride',
  'ends',
  'goTo',
  'round',
  'reject',
  'correct',
  'look',
  'greys',
  'magnifier',
  'hold',
  'repeat',
  'undo',
  'putDown',
  'handles',
  'film',
  'streak',
] as const;

const TYPING =
  'input:not([type="radio"]):not([type="checkbox"]):not([type="range"]), textarea, select';

/** Text that is being typed has an undo of its own; a field at rest says so. */
const OWN_TEXT =
  ':is(input:not([type="radio"]):not([type="checkbox"]):not([type="range"]), textarea):not([data-at-rest])';

function goBackOrForth(desk: Desk, { key, shiftKey }: KeyboardEvent): boolean {
  const { undo, redo } = undoablesOf(desk);
  switch (key.toLowerCase()) {
    case 'z':
      if (shiftKey) redo();
      else undo();
      return true;
    case 'y':
      redo();
      return true;
    default:
      return false;
  }
}

/** Keys of the page as a whole; a field, slider or handle that takes the key itself comes first. */
export function handleKey(desk: Desk, event: KeyboardEvent): void {
  // A dialogue has the keys to itself, Escape first of all.
  if (event.defaultPrevented || event.altKey || document.querySelector('dialog[open]')) return;
  const target = event.target instanceof Element ? event.target : null;
  if (event.ctrlKey || event.metaKey) {
    if (!target?.closest(OWN_TEXT) && goBackOrForth(desk, event)) event.preventDefault();
    return;
  }
  // The others are those of a shot and its film.
  if (desk.place.value !== 'shot' || target?.closest(TYPING)) return;
  const single = event.key.length === 1 && event.key !== ' ';
  if (single && !desk.preferences.singleKeys.value) return;
  if (actOn(desk, event, target)) event.preventDefault();
}

function actOn(desk: Desk, event: KeyboardEvent, target: Element | null): boolean {
  const { player } = desk.session;
  const ownArrows = target?.closest('input, [role="slider"], [role="radiogroup"]');
  const ownSpace = target?.closest('button, input, summary, a');
  const stride = event.shiftKey ? 10 : 1;
  switch (event.key) {
    case ' ':
      if (ownSpace) return false;
      if (player.playing.value) player.pause();
      else player.play();
      return true;
    case 'ArrowLeft':
      if (ownArrows) return false;
      void player.step(-stride);
      return true;
    case 'ArrowRight':
      if (ownArrows) return false;
      void player.step(stride);
      return true;
    case 'Home':
    case 'End':
      if (ownArrows) return false;
      desk.pick(event.key === 'Home' ? 0 : player.frameCount.value - 1);
      return true;
    case 'Escape':
      desk.mode.value = INSPECT;
      desk.helpOpen.value = false;
      return true;
    case 'd':
    case 'f':
    case 'g':
    case 'm':
    case 'h':
    case 'r':
      return filmShown(desk) && changeLook(desk, event.key);
    case 'n':
    case 'p':
      if (!framesShown(desk)) return false;
      desk.goRound(event.key === 'n' ? 'next' : 'previous');
      return true;
    case 'x':
      if (!framesShown(desk)) return false;
      rejectFrame(desk, player.current.value);
      return true;
    case 'c':
      if (!framesShown(desk)) return false;
      desk.toggleMode({ kind: 'point' });
      return true;
    default: {
      const step = STEPS[Number(event.key) - 1];
      if (step === undefined) return false;
      desk.step.value = step;
      return true;
    }
  }
}

function changeLook({ look, session }: Desk, key: 'd' | 'f' | 'g' | 'm' | 'h' | 'r'): true {
  const { player } = session;
  if (key === 'd') look.show(look.showing.value === 'change' ? 'filmed' : 'change');
  if (key === 'f') look.show(look.showing.value === 'flight' ? 'filmed' : 'flight');
  if (key === 'g') look.stretch(look.greys.value === null);
  if (key === 'm') look.magnified.value = !look.magnified.value;
  if (key === 'h') look.hold(look.held.value === null);
  if (key === 'r') player.repeats.value = !player.repeats.value;
  return true;
}

/** The film is on the screen in every step but that of the models. */
const filmShown = ({ step, session }: Desk): boolean =>
  step.value !== 'models' && session.player.shown.value !== null;

/** Frames are looked at one by one in these steps. */
const framesShown = ({ step, session }: Desk): boolean =>
  (step.value === 'ball' || step.value === 'result') && session.films.film.value !== null;
