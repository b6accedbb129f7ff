import type { FootageFile } from '../../footage/source';
import { sizeOf } from '../footageFiles';
import { fileOf, handleOf, type KeptHandle } from './fileHandles';

/** Where the footage of a desk is to be had after a reload. */
export type KeptFootage =
  | { readonly kind: 'sample'; readonly id: string }
  /** Copied to the origin's private files. */
  | { readonly kind: 'copy'; readonly folder: string; readonly names: readonly string[] }
  | { readonly kind: 'handles'; readonly handles: readonly KeptHandle[] }
  /** To be chosen again. */
  | { readonly kind: 'none' };

/** The origin's private files; rejects where the browser has none for this page. */
export type Root = () => Promise<FileSystemDirectoryHandle>;

/** Larger footage is not copied: writing it twice would take long and fill the disk, bytes. */
export const COPIED_UP_TO = 256 * 2 ** 20;
/** A copy must leave free so many times its size. */
const ROOM = 2;
const FOLDER = 'footage';

/** What can be kept of footage at once. */
export function withoutCopy(files: readonly FootageFile[], sample: string | null): KeptFootage {
  if (sample !== null) return { kind: 'sample', id: sample };
  const handles = files.flatMap(({ blob }) => handleOf(blob) ?? []);
  return handles.length === files.length ? { kind: 'handles', handles } : { kind: 'none' };
}

/** Whether footage is small enough to be copied, for the disk too. */
export async function isWorthCopying(
  files: readonly FootageFile[],
  estimate: () => Promise<StorageEstimate>,
): Promise<boolean> {
  const size = sizeOf(files);
  if (size > COPIED_UP_TO) return false;
  const { quota = 0, usage = 0 } = await estimate();
  return quota - usage > ROOM * size;
}

/** Copies footage to a folder of its own under the desk's. Throws where the disk is full. */
export async function copyFootage(
  root: Root,
  desk: string,
  folder: string,
  files: readonly FootageFile[],
  signal: AbortSignal,
): Promise<KeptFootage> {
  const place = await folderOf(await root(), [FOLDER, desk, folder]);
  for (const { name, blob } of files) {
    const file = await place.getFileHandle(name, { create: true });
    await blob.stream().pipeTo(await file.createWritable(), { signal });
  }
  return { kind: 'copy', folder: `${desk}/${folder}`, names: files.map(({ name }) => name) };
}

/** Removes the copies of a desk but one; null: all. */
export async function dropCopies(root: Root, desk: string, but: string | null): Promise<void> {
  const all = await folderOf(await root(), [FOLDER, desk]);
  const names: string[] = [];
  for await (const name of all.keys()) names.push(name);
  for (const name of names) {
    if (name !== but) await all.removeEntry(name, { recursive: true });
  }
}

/** The files, without asking anybody; null: somebody has to be asked. */
export async function findFootage(root: Root, kept: KeptFootage): Promise<FootageFile[] | null> {
  switch (kept.kind) {
    case 'copy': {
      const place = await folderOf(await root(), [FOLDER, ...kept.folder.split('/')]);
      return Promise.all(
        kept.names.map(async (name) => ({
          name,
          blob: await (await place.getFileHandle(name)).getFile(),
        })),
      );
    }
    case 'handles': {
      const granted = await Promise.all(
        kept.handles.map((one) => one.queryPermission?.({ mode: 'read' }) ?? 'granted'),
      );
      return granted.every((one) => one === 'granted') ? filesOf(kept.handles) : null;
    }
    default:
      return null;
  }
}

/** The files after asking the browser for leave to read them, which a click has to do; null: refused. */
export async function askForFootage(handles: readonly KeptHandle[]): Promise<FootageFile[] | null> {
  for (const handle of handles) {
    const answer = (await handle.requestPermission?.({ mode: 'read' })) ?? 'granted';
    if (answer !== 'granted') return null;
  }
  return filesOf(handles);
}

const filesOf = (handles: readonly KeptHandle[]) =>
  Promise.all(handles.map(async (handle) => ({ name: handle.name, blob: await fileOf(handle) })));

async function folderOf(
  root: FileSystemDirectoryHandle,
  path: readonly string[],
): Promise<FileSystemDirectoryHandle> {
  let folder = root;
  for (const name of path) folder = await folder.getDirectoryHandle(name, { create: true });
  return folder;
}
