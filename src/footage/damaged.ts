import { formatCount } from '../core/format';
import { ExitframeError } from '../core/reason';

const REMEDY = 'Copy the clip from the camera again.';

/** What stands where a part of the container should begin is none. */
export const brokenParts = (name: string, at: number): ExitframeError =>
  new ExitframeError(
    'brokenParts',
    `"${name}" is damaged: what stands at byte ${formatCount(at)} is no part of a film of its kind.`,
    REMEDY,
    { values: { name, at: formatCount(at) } },
  );

/** Two lists of one index do not agree. */
export const brokenIndex = (name: string, timed: number, sized: number): ExitframeError =>
  new ExitframeError(
    'brokenIndex',
    `"${name}" is damaged: its index has times for ${formatCount(timed)} frames and places for ${formatCount(sized)}.`,
    REMEDY,
    { values: { name, timed: formatCount(timed), sized: formatCount(sized) } },
  );

export const tooManyParts = (name: string, most: number): ExitframeError =>
  new ExitframeError(
    'tooManyParts',
    `"${name}" is damaged: it is made of more than ${formatCount(most)} parts.`,
    REMEDY,
    { values: { name, most: formatCount(most) } },
  );

export const tooShort = (name: string, stated: number, there: number): ExitframeError =>
  new ExitframeError(
    'truncated',
    `"${name}" is cut off: it should have ${stated} bytes and has ${there}.`,
    REMEDY,
    { values: { form: 'bytes', name, stated, there } },
  );
