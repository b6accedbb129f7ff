import type { NotebookEntry } from '../../shot/notebook';

/** Entries of a record: with the whole notebook in one, a tick among 2000 shots held the page up for 0.3 s. */
const A_PAGE = 50;

const pageName = (page: number) => `notebook-${page}`;
const pageCount = (entries: number) => Math.ceil(entries / A_PAGE);

/** The records whose entries are not those `before` has in their places, by name. */
export function changedPages(
  entries: readonly NotebookEntry[],
  before: readonly NotebookEntry[],
): Record<string, readonly NotebookEntry[]> {
  const changed: Record<string, readonly NotebookEntry[]> = {};
  for (let page = 0; page < pageCount(entries.length); page++) {
    const some = entries.slice(page * A_PAGE, (page + 1) * A_PAGE);
    const same = before.slice(page * A_PAGE, (page + 1) * A_PAGE);
    if (some.length !== same.length || some.some((entry, i) => entry !== same[i])) {
      changed[pageName(page)] = some;
    }
  }
  return changed;
}

/** The first `count` entries, as they were kept. */
export async function readPages(
  part: (name: string) => Promise<unknown>,
  count: number,
): Promise<unknown[]> {
  const pages = await Promise.all(
    Array.from({ length: pageCount(count) }, (_, page) => part(pageName(page))),
  );
  return pages.flat().slice(0, count);
}
