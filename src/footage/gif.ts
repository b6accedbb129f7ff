import { ExitframeError } from '../core/reason';
import { headersOf } from './bytes';
import { brokenParts } from './damaged';
import type { FootageFile } from './source';

const IMAGE = 0x2c;
const EXTENSION = 0x21;
const TRAILER = 0x3b;

/**
 * Checks that a GIF's blocks follow one another to its trailer (GIF89a, sections 15 to 27; from
 * memory): a decoder goes on to whatever looks like the next one. Throws `truncated`, `brokenParts`.
 */
export async function requireWholeGif(file: FootageFile): Promise<void> {
  const { name, blob } = file;
  const read = headersOf(blob);
  const byteAt = async (at: number) => {
    if (at >= blob.size) throw cutOff(name);
    return (await read(at, 1)).getUint8(0);
  };
  const tableAfter = async (flagsAt: number) => {
    const flags = await byteAt(flagsAt);
    return flags & 0x80 ? 3 * 2 ** ((flags & 7) + 1) : 0;
  };
  let at = 13 + (await tableAfter(10));
  for (;;) {
    const kind = await byteAt(at);
    if (kind === TRAILER) return;
    if (kind !== IMAGE && kind !== EXTENSION) throw brokenParts(name, at);
    // An image: its place and size, its colours, the bits of its codes. An extension: its label.
    at += kind === EXTENSION ? 2 : 11 + (await tableAfter(at + 9));
    for (let length = await byteAt(at); length > 0; length = await byteAt(at)) at += 1 + length;
    at += 1;
  }
}

const cutOff = (name: string) =>
  new ExitframeError(
    'truncated',
    `"${name}" is cut off in the middle of a frame.`,
    'Copy the clip from the camera again.',
    { values: { form: 'midFrame', name, there: 0, stated: 0 } },
  );
