import type { Result, Shot } from './resultTypes';

/** Writes to a file the person chooses, or downloads where the browser cannot ask. False: the person chose no file. */
export async function saveFile(
  name: string,
  data: string | Blob,
  description: string,
  kind: FileKind = 'application/json',
): Promise<boolean> {
  const picker = (window as { showSaveFilePicker?: SaveFilePicker }).showSaveFilePicker;
  if (picker === undefined) {
    download(name, data, kind);
    return true;
  }
  try {
    const handle = await picker({
      suggestedName: name,
      types: [{ description, accept: { [kind]: [ENDINGS[kind]] } }],
    });
    const stream = await handle.createWritable();
    await stream.write(data);
    await stream.close();
    return true;
  } catch (error) {
    // Closing the dialog is a choice, not a fault.
    if (error instanceof DOMException && error.name === 'AbortError') return false;
    throw error;
  }
}

const ENDINGS = {
  'application/json': '.json',
  'text/csv': '.csv',
  'text/html': '.html',
  'image/svg+xml': '.svg',
  'image/png': '.png',
} as const;
type FileKind = keyof typeof ENDINGS;

/** The part of the File System Access API that is used; the DOM library of TypeScript lacks the picker. */
type SaveFilePicker = (options: {
  suggestedName: string;
  types: { description: string; accept: Record<string, string[]> }[];
}) => Promise<FileSystemFileHandle>;

function download(name: string, data: string | Blob, type: FileKind): void {
  const url = URL.createObjectURL(new Blob([data], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** A file name from a shot's name: letters, digits, dots and dashes. */
export const fileNameOf = (shotName: string): string =>
  shotName
    .trim()
    .replace(/[^\p{L}\p{N}._-]+/gu, '-')
    .replace(/^-+|-+$/g, '') || 'shot';

/** A shot as it would be saved, and its result. */
export function textFilesOf(shot: Shot, result: Result | null): readonly File[] {
  const file = (ending: string, data: unknown) =>
    new File([JSON.stringify(data)], `${fileNameOf(shot.name)}.${ending}.json`);
  return [file('shot', shot), ...(result === null ? [] : [file('result', result)])];
}
