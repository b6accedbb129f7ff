import { failure, type Outcome, success } from '../core/reason';
import type { CameraMode } from '../shot/planning';

const BETWEEN = /[\s,;x×]+/;

/** The text that a person edits: a line a mode. */
export const modesText = (modes: readonly CameraMode[]): string =>
  modes.map(({ rate, width, height }) => `${rate}  ${width} x ${height}`).join('\n');

/** Reads lines of rate, width and height: '12000 1024 x 256'. Failures: `modeUnreadable`, `noModes`. */
export function parseModes(text: string): Outcome<CameraMode[]> {
  const modes: CameraMode[] = [];
  for (const line of text.split('\n')) {
    const words = line.trim();
    if (words === '') continue;
    const numbers = words.split(BETWEEN).map(Number);
    const [rate = 0, width = 0, height = 0] = numbers;
    if (numbers.length !== 3 || !numbers.every((n) => Number.isFinite(n) && n > 0)) {
      return failure(
        'modeUnreadable',
        `The line “${words}” is not a camera mode.`,
        'Write frames per second, width and height: 12000 1024 x 256.',
        { words },
      );
    }
    modes.push({ rate, width, height });
  }
  return modes.length > 0
    ? success(modes)
    : failure('noModes', 'No mode is listed.', 'Write a line a mode: 12000 1024 x 256.');
}
