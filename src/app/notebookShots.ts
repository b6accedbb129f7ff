import type { NotebookEntry } from '../shot/notebook';
import { completeShot } from './draft';
import { fileNameOf } from './saving';
import type { Session } from './session';

/** Writes the shot that is open, with what was measured of it, into the notebook. True where it went in. */
export async function addOpenShot({
  shots,
  measuring,
  films,
  notebook,
  notices,
}: Session): Promise<boolean> {
  const draft = shots.draft.value;
  if (draft === null) return false;
  const shot = completeShot(draft);
  if (!shot.ok) {
    notices.problem('result', shot.reason);
    return false;
  }
  const reduction = measuring.reduction.value;
  const name = fileNameOf(draft.name);
  const fresh = reduction !== null && measuring.freshness.value === 'fresh';
  const texts: readonly (readonly [ending: string, data: unknown])[] = [
    ['shot', shot.value],
    ...(fresh ? [['result', reduction.result] as const] : []),
  ];
  const footage = films.film.value?.files ?? [];
  await notebook.add([
    ...texts.map(([ending, data]) => new File([JSON.stringify(data)], `${name}.${ending}.json`)),
    ...footage.map((one) => new File([one.blob], one.name)),
  ]);
  return true;
}

/** Opens the film of a shot in the notebook, or asks for its footage where that is not at hand. */
export async function openNotebookShot(session: Session, entry: NotebookEntry): Promise<void> {
  const files = session.notebook.filmOf(entry);
  if (files !== null) await session.openFiles(files);
}
