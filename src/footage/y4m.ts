import { headersOf, lettersAt, viewOf } from './bytes';
import { brokenParts, tooManyParts, tooShort } from './damaged';
import type { FootageFile } from './source';

export const Y4M = 'YUV4MPEG2 ';
const FRAME = 'FRAME';
/** Lines of letters before the film and before each frame: hardly ever longer than a few dozen. */
const [LONGEST_HEAD, LONGEST_FRAME_HEAD] = [1024, 80] as const;
const MOST_FRAMES = 10_000_000;

/** Samples a frame has in all its planes, by the beginning of the format's colour tag; more exact ones first. */
const SAMPLES: readonly (readonly [tag: string, of: (w: number, h: number) => number])[] = [
  ['444alpha', (w, h) => 4 * w * h],
  ['mono', (w, h) => w * h],
  ['444', (w, h) => 3 * w * h],
  ['422', (w, h) => w * h + 2 * Math.ceil(w / 2) * h],
  ['411', (w, h) => w * h + 2 * Math.ceil(w / 4) * h],
  ['420', (w, h) => w * h + 2 * Math.ceil(w / 2) * Math.ceil(h / 2)],
];

/**
 * Checks that a Y4M film ends where a frame does: a decoder leaves out a last frame that is cut off, and says nothing.
 * Colours it does not know pass. Throws `truncated`, `brokenParts`, `tooManyParts`.
 *
 * Layout: yuv4mpeg(5) of the MJPEG tools; from memory.
 */
export async function requireWholeY4m(file: FootageFile): Promise<void> {
  const { name, blob } = file;
  const head = lineOf(await viewOf(blob, 0, LONGEST_HEAD));
  const bytes = head === null ? null : bytesOfFrame(head);
  if (head === null || bytes === null) return;
  const read = headersOf(blob);
  let at = head.length + 1;
  for (let frames = 0; at < blob.size; frames++) {
    if (frames === MOST_FRAMES) throw tooManyParts(name, MOST_FRAMES);
    const line = lineOf(await read(at, LONGEST_FRAME_HEAD));
    if (line === null && blob.size - at < LONGEST_FRAME_HEAD) {
      throw tooShort(name, at + FRAME.length + 1 + bytes, blob.size);
    }
    if (!line?.startsWith(FRAME)) throw brokenParts(name, at);
    const next = at + line.length + 1 + bytes;
    if (next > blob.size) throw tooShort(name, next, blob.size);
    // As a rule all frames are as long as the first.
    if (frames === 0 && (blob.size - at) % (next - at) === 0) return;
    at = next;
  }
}

/** The letters up to the end of the first line; null where there is none. */
function lineOf(view: DataView): string | null {
  const letters = lettersAt(view, 0, view.byteLength);
  const end = letters.indexOf('\n');
  return end < 0 ? null : letters.slice(0, end);
}

function bytesOfFrame(head: string): number | null {
  const [, ...fields] = head.split(' ');
  const field = (letter: string) => fields.find((one) => one.startsWith(letter))?.slice(1);
  const colours = field('C') ?? '420';
  const [width, height] = [Number(field('W')), Number(field('H'))];
  const samples = SAMPLES.find(([tag]) => colours.startsWith(tag))?.[1](width, height);
  const deep = /(?:p|mono)(?:9|1[0-6])$/.test(colours) ? 2 : 1;
  return samples !== undefined && samples > 0 ? samples * deep : null;
}
