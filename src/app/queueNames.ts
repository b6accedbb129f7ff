import { pathOf } from './filmShelf';

/**
 * A name for each clip that no other has: the file's without its ending, with the folder before it where that is
 * needed, with a number where that does not help. A sequence is named after its folder.
 */
export function namesOf(
  clips: readonly (readonly File[])[],
  taken: readonly string[],
): readonly string[] {
  const used = new Set(taken);
  return clips.map((files) => {
    const [first] = files;
    const parts = (first === undefined ? '' : pathOf(first)).split('/');
    const file = (parts.pop() ?? '').replace(/\.[^.]+$/, '');
    const folder = parts.at(-1);
    const short = files.length > 1 && folder !== undefined ? folder : file;
    const long = folder === undefined || short === folder ? short : `${folder} ${file}`;
    let name = used.has(short) ? long : short;
    for (let n = 2; used.has(name); n++) name = `${long} ${n}`;
    used.add(name);
    return name;
  });
}
