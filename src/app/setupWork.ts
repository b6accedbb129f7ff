import { failure, type Outcome, success } from '../core/reason';
import { parseSetup, type Setup } from '../shot/setupFile';
import type { Session } from './session';
import { followSetup, sceneOf, setupFits, setupFrom } from './setups';

/** Keeps what the open shot is calibrated with as a setup, which the shot then follows; `label`: what undo calls that. */
export function saveAsSetup(session: Session, name: string, label: string): Outcome<Setup> {
  const { shots, films, measuring, setups } = session;
  const draft = shots.draft.value;
  const film = films.film.value;
  if (draft === null || film === null) return NO_SHOT;
  const { width, height } = film.info;
  const reduction = measuring.freshness.value === 'fresh' ? measuring.reduction.value : null;
  const scene = reduction === null ? null : sceneOf(draft.name, reduction);
  const about = { id: setups.newId(), name, frame: { width, height }, scene };
  const setup = setupFrom(draft, about);
  if (!setup.ok) return setup;
  const kept = setups.add(setup.value);
  takeSetup(session, setup.value, label);
  return kept.ok ? setup : kept;
}

/** Gives the open shot the clock, scale and muzzle of a setup. */
export function takeSetup(
  { shots, films, keepSetupScene }: Session,
  setup: Setup,
  label: string,
): Outcome<null> {
  const film = films.film.value;
  if (film === null) return NO_SHOT;
  const fits = setupFits(setup, film.info);
  if (!fits.ok) return fits;
  keepSetupScene(setup);
  shots.edit(followSetup(setup), { label });
  return fits;
}

/** Takes a setup from a file among those known. */
export async function readSetup({ setups }: Session, file: File): Promise<Outcome<Setup>> {
  const setup = parseSetup(await file.text());
  if (!setup.ok) {
    const { code, message, remedy, values } = setup.reason;
    return failure(code, `${file.name}: ${message}`, remedy, { ...values, about: file.name });
  }
  const kept = setups.add(setup.value);
  return kept.ok ? success(setup.value) : kept;
}

const NO_SHOT = failure('noFootage', 'No footage is open.', 'Open a clip first.');
