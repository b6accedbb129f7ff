import { ExitframeError } from '../../core/reason';

/** Why the library cannot go on: out of memory most of all. Another thread can start it afresh. */
export const visionFailed = (why: string, cause?: unknown) =>
  new ExitframeError(
    'visionFailed',
    `The image library OpenCV broke down: ${why}.`,
    'Memory may have run out: close other tabs and programs, then measure again.',
    { cause, values: { why } },
  );
