import { ExitframeError } from '../core/reason';

/** Throws `singleFrame` where there are too few frames to see anything move. */
export function requireFrames(name: string, count: number): void {
  if (count >= 2) return;
  throw new ExitframeError(
    'singleFrame',
    `"${name}" holds ${count === 1 ? 'a single frame' : 'no frame'}.`,
    'Choose a clip, or all pictures of a sequence together.',
    { values: { form: 'file', name, frames: count } },
  );
}
