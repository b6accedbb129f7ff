import { render } from 'preact';
import { page } from 'vitest/browser';
import { draftStore } from '../../../src/app/drafts';
import { createPreferences, type Preferences } from '../../../src/app/preferences';
import { createSession, type Session } from '../../../src/app/session';
import { setupSceneStore } from '../../../src/app/setupScenes';
import { createSetups } from '../../../src/app/setups';
import { App } from '../../../src/ui/App';
import { createDesk, type Desk } from '../../../src/ui/desk';
import { type FakeCrew, fakeCrew } from '../../fixtures/crew';
import { stateInputs } from '../../fixtures/stateInputs';

export interface MountedPage {
  readonly host: HTMLElement;
  readonly crew: FakeCrew;
  readonly session: Session;
  readonly preferences: Preferences;
  readonly desk: Desk;
  unmount(): void;
}

/** The whole page over a crew without threads, nothing stored, nothing open. */
export async function mountPage(): Promise<MountedPage> {
  localStorage.clear();
  await page.viewport(1280, 900);
  const host = document.createElement('div');
  document.body.append(host);
  const crew = fakeCrew();
  const session = createSession(
    crew,
    draftStore(localStorage),
    setupSceneStore(localStorage),
    createSetups(localStorage),
  );
  const preferences = createPreferences(localStorage);
  const desk = createDesk(session, preferences);
  render(<App desk={desk} />, host);
  return {
    host,
    crew,
    session,
    preferences,
    desk,
    unmount() {
      render(null, host);
      host.remove();
      session.dispose();
    },
  };
}

export const openClip = (session: Session) => session.openFiles([new File(['film'], 'clip.mp4')]);

/** Opens a clip, states what it needs and measures it. */
export async function measuredClip(session: Session): Promise<void> {
  await openClip(session);
  stateInputs(session);
  await session.measure();
}
