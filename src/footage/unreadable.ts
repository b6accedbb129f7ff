import { ExitframeError, reasonOf } from '../core/reason';

/** A file that was there and now cannot be read: changed, moved, on a disk pulled out. */
export const unreadable = (name: string, cause: unknown): ExitframeError =>
  new ExitframeError(
    'unreadable',
    `"${name}" can no longer be read: ${reasonOf(cause).message}.`,
    'Put the file back and open it again.',
    { cause, values: { name, why: reasonOf(cause).message } },
  );
