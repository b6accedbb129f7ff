import { failure, type Outcome, success } from '../core/reason';
import type { FootageFile } from '../footage/source';
import { pathOf } from './filmShelf';
import { droppedHandle, fileOf } from './keeping/fileHandles';

/** What was dropped or chosen, told apart by name. */
export interface ChosenFiles {
  /** One file, or an image sequence in the order of its numbers. */
  readonly footage: readonly FootageFile[];
  readonly shotFile: File | null;
}

const SHOT_FILE = /\.(shot\.)?json$/i;
const IMAGE = /\.(png|tiff?|bmp|jpe?g|pgm|dpx|exr)$/i;
/** Names that headerless pixels commonly have. */
const HEADERLESS = /\.(raw|bin|dat|gr[ae]y|y|y8|y16|mono8|mono16)$/i;
/** What folders commonly hold besides the images. */
const IGNORED = /^(\.|thumbs\.db$)|\.(result\.json|truth\.json|txt|md|csv)$/i;

const inNumberOrder = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** The one file whose name says that its pixels have no header; null: there is none. */
export function headerlessOf(footage: readonly FootageFile[]): FootageFile | null {
  const [file = null] = footage;
  return footage.length === 1 && file !== null && HEADERLESS.test(file.name) ? file : null;
}

/** Failures: `nothingChosen`, `severalShots`, `severalClips`. */
export function sortFiles(files: readonly File[]): Outcome<ChosenFiles> {
  // A single file is never passed over: the decoders say what is wrong with it.
  const relevant = files.length === 1 ? files : files.filter((file) => !IGNORED.test(file.name));
  const shotFiles = relevant.filter((file) => SHOT_FILE.test(file.name));
  const others = relevant.filter((file) => !SHOT_FILE.test(file.name));
  if (shotFiles.length > 1) {
    return failure(
      'severalShots',
      `${shotFiles.length} shot files were given; one is opened at a time.`,
      'Choose one shot file, with its footage.',
      { files: shotFiles.length },
    );
  }
  const [shotFile = null] = shotFiles;
  const images = others.filter((file) => IMAGE.test(file.name));
  const clips = others.filter((file) => !IMAGE.test(file.name));
  const sequence = [...images].sort((a, b) => inNumberOrder.compare(a.name, b.name));
  const [clip] = clips;
  if (clips.length > 1 || (clip !== undefined && images.length > 0)) {
    const names = others.slice(0, 3).map((file) => file.name);
    return failure(
      'severalClips',
      `Several clips were given (${names.join(', ')}${others.length > 3 ? ', …' : ''}); one is opened at a time.`,
      'Choose one clip, or the images of one sequence.',
      { names: `${names.join(', ')}${others.length > 3 ? ', …' : ''}` },
    );
  }
  const footage = clip === undefined ? sequence : [clip];
  if (footage.length === 0 && shotFile === null) {
    return failure(
      'nothingChosen',
      'No footage was found there.',
      'Choose a clip or a folder of images.',
    );
  }
  return success({ footage: footage.map((file) => ({ name: file.name, blob: file })), shotFile });
}

/** Many clips at once: each file one, the images of a folder one together. What is no footage by its name is left out. */
export function clipsAmong(files: readonly File[]): (readonly File[])[] {
  const footage = files.filter(({ name }) => !IGNORED.test(name) && !SHOT_FILE.test(name));
  const clips = footage.filter(({ name }) => !IMAGE.test(name)).map((file) => [file]);
  const sequences = new Map<string, File[]>();
  for (const image of footage.filter(({ name }) => IMAGE.test(name))) {
    const folder = pathOf(image).replace(/[^/]*$/, '');
    sequences.set(folder, [...(sequences.get(folder) ?? []), image]);
  }
  const inOrder = (sequence: File[]) =>
    sequence.sort((a, b) => inNumberOrder.compare(a.name, b.name));
  return [...clips, ...[...sequences.values()].map(inOrder)].sort((a, b) =>
    inNumberOrder.compare(pathOf(a[0] as File), pathOf(b[0] as File)),
  );
}

/** Every file of a drop, folders gone through. */
export async function droppedFiles(transfer: DataTransfer): Promise<File[]> {
  // Both must be asked for while the drop is handled: later it is empty.
  const dropped = [...transfer.items].map((item) => ({
    entry: item.webkitGetAsEntry(),
    handle: droppedHandle(item),
  }));
  if (dropped.every(({ entry }) => entry === null)) return [...transfer.files];
  const found = dropped.map(async ({ entry, handle }) => {
    const file = await handle;
    if (file !== null) return [await fileOf(file)];
    return entry === null ? [] : filesUnder(entry);
  });
  return (await Promise.all(found)).flat();
}

async function filesUnder(entry: FileSystemEntry): Promise<File[]> {
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) =>
      (entry as FileSystemFileEntry).file(resolve, reject),
    );
    return [file];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const found: FileSystemEntry[] = [];
  // A reader hands out a hundred entries at a time; an empty batch ends the folder.
  for (;;) {
    const batch = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (batch.length === 0) break;
    found.push(...batch);
  }
  return (await Promise.all(found.map(filesUnder))).flat();
}

/** Bytes of all files together. */
export const sizeOf = (files: readonly FootageFile[]): number =>
  files.reduce((sum, { blob }) => sum + blob.size, 0);
