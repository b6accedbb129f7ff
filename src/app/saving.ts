import type { Result, Shot } from './resultTypes';

/** Writes text to a file the person chooses, or downloads it where the browser cannot ask. */
export async function saveText(
  name: string,
  text: string,
  description: string,
  kind: FileKind = 'application/json',
): Promise<boolean> {
  const picker = (window as { showSaveFilePicker?: SaveFilePicker }).showSaveFilePicker;
  if (picker === undefined) {
    download(name, text, kind);
    return true;
  }
  try {
    const handle = await picker({
      suggestedName: name,
      types: [{ description, accept: { [kind]: [ENDINGS[kind]] } }],
    });
    const stream = await handle.createWritable();
    await stream.write(text);
    await stream.close();
    return true;
  } catch (error) {
    // Closing the dialog is a choice, not a fault.
    if (error instanceof DOMException && error.name === 'AbortError') return false;
    throw error;
  }
}

const ENDINGS = { 'application/json': '.json', 'text/csv': '.csv' } as const;
type FileKind = keyof typeof ENDINGS;

/** The part of the File System Access API that is used; the DOM library of TypeScript lacks the picker. */
type SaveFilePicker = (options: {
  suggestedName: string;
  types: { description: string; accept: Record<string, string[]> }[];
}) => Promise<FileSystemFileHandle>;

function download(name: string, text: string, type: FileKind): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
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
