import { beforeEach, expect, it } from 'vitest';
import { draftStore } from '../../../src/app/drafts';
import { NOTHING_LEFT } from '../../../src/app/keeping/left';
import { createSession } from '../../../src/app/session';
import { setupSceneStore } from '../../../src/app/setupScenes';
import { createSetups } from '../../../src/app/setups';
import type { FootageFile } from '../../../src/footage/source';
import { fakeCrew } from '../../fixtures/crew';

const started = () =>
  createSession(
    fakeCrew(),
    draftStore(localStorage),
    setupSceneStore(localStorage),
    createSetups(localStorage),
  );
const clip = (name: string) => new File(['film'], name);

/** Resumes work on `left.mp4`, whose footage comes only once something else was chosen; gives the film then open. */
async function resumed(chosen: readonly File[]): Promise<string | undefined> {
  const before = started();
  await before.openFiles([clip('left.mp4')]);
  const { value: work } = before.shots.work;
  before.dispose();
  if (work === null) throw new Error('Nothing is open.');
  const session = started();
  let give = (_: readonly FootageFile[]) => {};
  const files = new Promise<readonly FootageFile[]>((resolve) => {
    give = resolve;
  });
  const shot = { work, measured: null, frame: 0, sampleId: null, ask: null, files: () => files };
  const resuming = session.resume({ ...NOTHING_LEFT, shot });
  if (chosen.length > 0) await session.openFiles(chosen);
  give([{ name: 'left.mp4', blob: clip('left.mp4') }]);
  await resuming;
  expect(session.awaited.value).toBeNull();
  const name = session.films.film.value?.info.name;
  session.dispose();
  return name;
}

beforeEach(() => localStorage.clear());

it('takes what a person opens before what the window was left with', async () => {
  expect(await resumed([])).toBe('left.mp4');
  expect(await resumed([clip('chosen.mp4')])).toBe('chosen.mp4');
});
