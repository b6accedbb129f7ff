/** What the browser lets a page keep of a file on disk, to read it again after a reload. */
export interface KeptHandle extends FileSystemFileHandle {
  queryPermission?(how: { readonly mode: 'read' }): Promise<PermissionState>;
  requestPermission?(how: { readonly mode: 'read' }): Promise<PermissionState>;
}

const handles = new WeakMap<Blob, KeptHandle>();

/** The handle that a file came with; null: it came without. */
export const handleOf = (file: Blob): KeptHandle | null => handles.get(file) ?? null;

/** The file behind a handle, which is remembered with it. */
export async function fileOf(handle: KeptHandle): Promise<File> {
  const file = await handle.getFile();
  handles.set(file, handle);
  return file;
}

type OpenFilePicker = (options: { readonly multiple: boolean }) => Promise<KeptHandle[]>;

/**
 * Lets a person choose files with the browser's own dialogue, handles kept. Null: this browser has no such dialogue
 * here; nothing: it was closed.
 */
export async function pickFiles(): Promise<File[] | null> {
  const picker = (window as { showOpenFilePicker?: OpenFilePicker }).showOpenFilePicker;
  if (picker === undefined) return null;
  try {
    return await Promise.all((await picker({ multiple: true })).map(fileOf));
  } catch (error) {
    // Closing the dialogue is a choice; refused it is within a frame of another page.
    if (!(error instanceof DOMException)) throw error;
    if (error.name === 'AbortError') return [];
    if (error.name === 'SecurityError') return null;
    throw error;
  }
}

type WithHandle = { getAsFileSystemHandle?(): Promise<FileSystemHandle | null> };

/** The files among what was dropped, by handle. To be called while the drop is handled. */
export function droppedHandle(item: DataTransferItem): Promise<KeptHandle | null> {
  const asked = (item as WithHandle).getAsFileSystemHandle?.() ?? Promise.resolve(null);
  return asked.then(
    (handle) => (handle?.kind === 'file' ? (handle as KeptHandle) : null),
    () => null,
  );
}
