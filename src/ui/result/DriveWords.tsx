import type { Reduction } from '../../app/resultTypes';
import { driveWords } from '../../report/document';

/** What the outside air could do at most: a rule of thumb beside the result. */
export function DriveWords({ drive }: { readonly drive: Reduction['drive'] }) {
  return <p data-role="drive">{driveWords(drive)}</p>;
}
