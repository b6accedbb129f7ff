import { renewableCrew } from './crew';
import { draftStore } from './drafts';
import { createPreferences } from './preferences';
import { FIRST_SAMPLE, SAMPLES } from './samples';
import { createSession, type Session } from './session';
import { setupSceneStore } from './setupScenes';
import { startWorkforce } from './workforce';

/** Starts the threads and opens the first sample, ready to reduce. */
export async function startPage() {
  let session: Session | null = null;
  const crew = await renewableCrew(startWorkforce, (message) => void session?.recover(message));
  session = createSession(crew, draftStore(localStorage), setupSceneStore(localStorage));
  const first = SAMPLES.find((one) => one.id === FIRST_SAMPLE) ?? SAMPLES[0];
  if (first !== undefined) void session.openSample(first);
  return { session, preferences: createPreferences(localStorage) };
}
