import { renewableCrew } from './crew';
import { draftStore } from './drafts';
import { browserPlace, startKeeping } from './keeping/keeping';
import { createPreferences } from './preferences';
import { FIRST_SAMPLE, SAMPLES } from './samples';
import { createSession, type Session } from './session';
import { setupSceneStore } from './setupScenes';
import { createSetups } from './setups';
import { startWorkforce } from './workforce';

/** Starts the threads and opens what the window was left with, or the first sample, ready to reduce. */
export async function startPage() {
  let session: Session | null = null;
  const [crew, keeping] = await Promise.all([
    renewableCrew(startWorkforce, (message) => void session?.recover(message)),
    startKeeping(browserPlace()),
  ]);
  session = createSession(
    crew,
    draftStore(localStorage),
    setupSceneStore(localStorage),
    createSetups(localStorage),
  );
  void session.resume(keeping.left);
  const first = SAMPLES.find((one) => one.id === FIRST_SAMPLE) ?? SAMPLES[0];
  if (keeping.left.shot === null && first !== undefined) void session.openSample(first);
  return { session, keeping, preferences: createPreferences(localStorage) };
}
