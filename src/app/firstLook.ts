import { validateResult } from '../shot/parseResult';
import type { Reduction } from './resultTypes';
import { fetchFile } from './samples';

/** The sample that the page opens with where nothing was left in the window. */
export const FIRST_SAMPLE = 'a-clean';

const urls = import.meta.glob<string>('../../sample-clips/*/*.reduction.json', {
  eager: true,
  query: '?url',
  import: 'default',
});

/** What was measured of the first sample beforehand; null where it is of another version, or cannot be had. */
export async function fetchFirstLook(): Promise<Reduction | null> {
  const [url] = Object.values(urls);
  if (url === undefined) return null;
  try {
    return reductionOf(JSON.parse(await (await fetchFile(url, 'first look')).text()));
  } catch {
    // The sample opens without it, to be measured.
    return null;
  }
}

/** A reduction as it was written: its arrays of numbers as the page has them. */
export function reductionOf(written: Reduction): Reduction | null {
  const { curve, seal } = written;
  const result = validateResult(written.result);
  if (!result.ok) return null;
  return {
    ...written,
    result: result.value,
    curve: curve && {
      times: Float64Array.from(curve.times),
      s: Float64Array.from(curve.s),
      sU: Float64Array.from(curve.sU),
      v: Float64Array.from(curve.v),
      vU: Float64Array.from(curve.vU),
    },
    seal: seal && {
      times: Float64Array.from(seal.times),
      front: Float64Array.from(seal.front),
      frontU: Float64Array.from(seal.frontU),
    },
  };
}
