import type { NotebookEntry } from '../shot/notebook';
import { completeShot } from './draft';
import type { QueuedClip } from './queue';
import { textFilesOf } from './saving';
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
  const fresh = reduction !== null && measuring.freshness.value === 'fresh';
  const footage = films.film.value?.files ?? [];
  await notebook.add([
    ...textFilesOf(shot.value, fresh ? reduction.result : null),
    ...footage.map((one) => new File([one.blob], one.name)),
  ]);
  return true;
}

/** Opens a clip of the queue, with what was stated for it where it was measured. */
export async function openQueued(session: Session, { files, state }: QueuedClip): Promise<void> {
  const texts = state.kind === 'done' ? textFilesOf(state.measured.shot, null) : [];
  await session.openFiles([...texts, ...files]);
}

/** Opens the film of a shot in the notebook, or asks for its footage where that is not at hand. */
export async function openNotebookShot(session: Session, entry: NotebookEntry): Promise<void> {
  const files = session.notebook.filmOf(entry);
  if (files !== null) await session.openFiles(files);
}
