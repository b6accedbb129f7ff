import { failure, type Outcome, success } from '../core/reason';
import { type ShotDraft, validateDraft } from './draft';

/** Keeps the inputs of each piece of footage, by its hash, so that a closed window loses nothing. */
export interface DraftStore {
  /** Failure `draftNotKept`: the browser refused to store it. */
  keep(sha256: string, draft: ShotDraft, savedAt: number): Outcome<null>;
  find(sha256: string): KeptDraft | null;
}

export interface KeptDraft {
  readonly draft: ShotDraft;
  /** ms since 1970 */
  readonly savedAt: number;
}

const PREFIX = 'exitframe-draft-';
/** A draft is a few kilobytes; the browser grants about five million characters. */
const MOST_DRAFTS = 100;

/** Drafts in the page's own storage (`localStorage`); footage itself is never stored. */
export function draftStore(storage: Storage): DraftStore {
  const keys = () => Object.keys(storage).filter((key) => key.startsWith(PREFIX));
  const savedAtOf = (key: string) => read(storage.getItem(key))?.savedAt ?? 0;
  return {
    keep(sha256, draft, savedAt) {
      try {
        storage.setItem(PREFIX + sha256, JSON.stringify({ savedAt, draft }));
        const oldest = keys().sort((a, b) => savedAtOf(a) - savedAtOf(b));
        for (const key of oldest.slice(0, -MOST_DRAFTS)) storage.removeItem(key);
        return success(null);
      } catch {
        return failure(
          'draftNotKept',
          'The browser did not keep the inputs of this shot.',
          'Save the shot file before you close the window.',
        );
      }
    },
    find(sha256) {
      try {
        return read(storage.getItem(PREFIX + sha256));
      } catch {
        return null;
      }
    },
  };
}

function read(text: string | null): KeptDraft | null {
  if (text === null) return null;
  try {
    const data: unknown = JSON.parse(text);
    if (typeof data !== 'object' || data === null) return null;
    const { savedAt, draft } = data as { savedAt?: unknown; draft?: unknown };
    const checked = validateDraft(draft);
    return typeof savedAt === 'number' && checked.ok ? { savedAt, draft: checked.value } : null;
  } catch {
    return null;
  }
}
