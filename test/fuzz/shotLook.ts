import type { Reason } from '../../src/core/reason';
import { reasonOf } from '../../src/core/reason';
import { parseShot } from '../../src/shot/parse';
import type { Result } from '../../src/shot/result';
import type { Shot } from '../../src/shot/schema';
import { failed, type Verdict } from './judge';

/** What came of a shot file: why it is refused, or what reducing it gave. */
export type ShotLook =
  | { readonly refused: Reason }
  | { readonly shot: string; readonly given: Reason | null; readonly odd: string | null };

/** A number that is none, or a value no JSON holds, and where. */
function oddIn(value: unknown, path: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${path} is ${value}`;
  if (value === undefined) return `${path} is undefined`;
  if (value === null || typeof value !== 'object') return null;
  for (const [key, inner] of Object.entries(value)) {
    const odd = oddIn(inner, `${path}.${key}`);
    if (odd !== null) return odd;
  }
  return null;
}

/** Reads a shot file and reduces the film with it; `reduce` throws where there is no result. */
export async function lookAtShot(
  text: string,
  reduce: (shot: Shot) => Promise<Result>,
): Promise<ShotLook> {
  try {
    const parsed = parseShot(text);
    if (!parsed.ok) return { refused: parsed.reason };
    const shot = JSON.stringify(parsed.value);
    try {
      const result = await reduce(parsed.value);
      const { exitVelocity } = result;
      const given = 'unavailable' in exitVelocity ? exitVelocity.unavailable : null;
      return { shot, given, odd: oddIn(result, 'result') };
    } catch (error) {
      return { shot, given: reasonOf(error), odd: null };
    }
  } catch (error) {
    return { refused: reasonOf(error) };
  }
}

export function judgeShot(whole: ShotLook, seen: ShotLook, codes: ReadonlySet<string>): Verdict {
  if ('refused' in whole) return failed(`the whole file is refused: ${whole.refused.message}`);
  const reason = 'refused' in seen ? seen.refused : seen.given;
  if (reason !== null) {
    const foreseen = codes.has(reason.code) && reason.code !== 'unexpected';
    return foreseen
      ? { outcome: 'refused', why: reason.code }
      : failed(`${reason.code}: ${reason.message}`);
  }
  if ('refused' in seen) return failed('refused without a reason');
  if (seen.odd !== null) return failed(seen.odd);
  if (seen.shot === whole.shot) return { outcome: 'same', why: '' };
  return { outcome: 'untold', why: 'another shot that can be' };
}
