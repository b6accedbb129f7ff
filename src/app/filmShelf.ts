/** Within the folder that was chosen. */
export const pathOf = (file: File): string => file.webkitRelativePath || file.name;

/** Footage that was chosen along with shot files: kept as handles, read only when a film is opened. */
export function createFilmShelf() {
  const byPath = new Map<string, File>();
  const byName = new Map<string, File[]>();
  /** Folder of each entry's shot file. */
  const folders = new Map<string, string>();
  return {
    keep(files: readonly File[]) {
      for (const file of files) {
        const others = (byName.get(file.name) ?? []).filter((one) => pathOf(one) !== pathOf(file));
        byName.set(file.name, [...others, file]);
        byPath.set(pathOf(file), file);
      }
    },
    /** Footage paths are relative to the shot file. */
    place(entry: string, shotPath: string) {
      folders.set(entry, shotPath.replace(/[^/\\]*$/, ''));
    },
    /** The files of an entry, all or none: by their place beside the shot file, or where the name is the only one. */
    find(entry: string, paths: readonly string[]): readonly File[] {
      const files = paths.flatMap((path) => {
        const beside = byPath.get(`${folders.get(entry) ?? ''}${path}`);
        const named = byName.get(path.replace(/^.*[/\\]/, '')) ?? [];
        return beside ?? (named.length === 1 ? named : []);
      });
      return files.length === paths.length ? files : [];
    },
  };
}
