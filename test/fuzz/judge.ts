import type { Look } from './look';

/**
 * What came of a mutant. `same`: as from the whole file, the change hit what nobody reads. `refused`: with a reason.
 * `warned`: read otherwise, and the user is told. `untold`: read otherwise, and nothing in the file can tell.
 * `failed`: anything else.
 */
export type Outcome = 'same' | 'refused' | 'warned' | 'untold' | 'failed';

export interface Verdict {
  readonly outcome: Outcome;
  /** Code of a reason, what changed, or what failed. */
  readonly why: string;
}

export const failed = (why: string): Verdict => ({ outcome: 'failed', why });

/** Codes listed in docs/error-codes.md. */
export const codesIn = (page: string): ReadonlySet<string> =>
  new Set(Array.from(page.matchAll(/^\| `(\w+)` \|/gm), ([, code]) => code as string));

/** `summed`: sums in the file tell any change of its pixels. `codes`: reasons that have been foreseen. */
export function judge(
  whole: Look,
  seen: Look,
  summed: boolean,
  codes: ReadonlySet<string>,
): Verdict {
  if ('refused' in whole) return failed(`the whole file is refused: ${whole.refused.message}`);
  if ('refused' in seen) {
    const { code, message } = seen.refused;
    const foreseen = codes.has(code) && code !== 'unexpected' && message.length > 20;
    return foreseen ? { outcome: 'refused', why: code } : failed(`${code}: ${message}`);
  }
  const parts = (['frames', 'facts', 'times', 'sound'] as const).filter(
    (part) => JSON.stringify(seen[part]) !== JSON.stringify(whole[part]),
  );
  if (parts.length === 0) return { outcome: 'same', why: '' };
  const told = seen.warnings.filter((code) => !whole.warnings.includes(code));
  if (told.length > 0) return { outcome: 'warned', why: told.join(', ') };
  if (summed && parts.includes('frames')) return failed('other frames, though the file sums them');
  return { outcome: 'untold', why: parts.join(', ') };
}
