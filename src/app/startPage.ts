import { renewableCrew } from './crew';
import { draftStore } from './drafts';
import { FIRST_SAMPLE } from './firstLook';
import { browserPlace, startKeeping } from './keeping/keeping';
import { createPreferences } from './preferences';
import { SAMPLES } from './samples';
import { createSession, type Session } from './session';
import { setupSceneStore } from './setupScenes';
import { createSetups } from './setups';
import { startWorkforce } from './workforce';

/**
 * Opens what the window was left with, or the first sample with what was measured of it before. The page need not wait
 * for the threads; `started` fails where one of them does not come up.
 */
export async function startPage() {
  let session: Session | null = null;
  const { crew, started } = renewableCrew(startWorkforce, (fault) => void session?.recover(fault));
  const keeping = await startKeeping(browserPlace());
  session = createSession(
    crew,
    draftStore(localStorage),
    setupSceneStore(localStorage),
    createSetups(localStorage),
  );
  void session.resume(keeping.left);
  const first = SAMPLES.find((one) => one.id === FIRST_SAMPLE) ?? SAMPLES[0];
  const { lost } = keeping;
  const opened = keeping.left.shot === null && first !== undefined && session.openFirst(first);
  // What is opened clears what was said before.
  if (lost !== null)
    void Promise.resolve(opened).then(() => session?.notices.problem('footage', lost));
  return { session, keeping, preferences: createPreferences(localStorage), started };
}
