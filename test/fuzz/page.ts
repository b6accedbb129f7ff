import { type Row, reasons, table } from './tally';

/** docs/fuzz.md. */
export const page = (rows: readonly Row[], seed: number, memory: number): string =>
  `# Damaged files

Written by \`npm run fuzz\` (seed ${seed}): each sample is changed at random and read to its end, under Node as the headless command does, and in Chromium by the page's own threads. A change is one to three of: bits flipped; bytes zeroed, drawn at random, deleted, doubled or exchanged; the file cut off; a field of 1 to 8 bytes, in the head, beside a box's or chunk's name or near the end, set to 0, 1, the largest or a negative number. A shot file is changed in its structure as well: numbers that are none or huge or negative, other types, keys deleted, doubled or taken from JavaScript's own objects, lists ten thousand deep, a byte order mark. The film is then reduced with each shot file that is taken.

${table(rows)}

- **read the same**: every frame, time, turn, pixel shape and level, and the sound, as in the whole file: the change hit what nobody reads. Of a shot file: the same shot.
- **refused**: with a reason that [error-codes.md](error-codes.md) lists. Of a shot file also: taken, and the film gives no speed with it, which is said. Reasons: ${reasons(rows, 'refused')}.
- **read, with a warning** in the result: ${reasons(rows, 'warned') || 'none'}.
- **changed, not detectable**: what is read differs, and nothing in the file says so. What differed: ${reasons(rows, 'untold')}.
- **failed**: it hung (for minutes), took more than 2 GiB, a thread or process died, an error nobody foresaw, a number that is none; frames that differ although the file holds sums of them (PNG, FFV1 version 3, zip); or frames that the page takes although ffmpeg finds them damaged.

The most memory a process took under Node was ${Math.round(memory / 1e6)} MB.

## What a format can tell

Whatever a decoder reports is a reason to refuse the film: it patches up what it cannot read, and such a picture must not be measured. Chromium's own H.264 decoder reports less than ffmpeg's: it patches some damage up without a word. The page therefore has ffmpeg decode again what it measures of such a film, and refuses it where ffmpeg complains or reads other grey values; here that is all of it. Beyond that it depends on the format:

| format | told | not told |
| --- | --- | --- |
| PNG, FFV1 version 3, zip | every change of the pixels, by the sums in the file | |
| MP4, MOV | a cut; tables of the index that disagree; what the H.264 decoder cannot read | other bits that are a picture as well; turn, pixel shape and times, which stand once only |
| MKV, WebM | a cut; parts that do not join; what the decoder cannot read | VP9 codes any bits as some picture; times |
| AVI, Motion-JPEG; JPEG | a cut; frames fewer than stated; codes that are none | other codes that are some picture; quantisation tables |
| GIF | a cut; blocks that do not join; codes that are none | other codes, colours, delays |
| TIFF, BMP, raw | sizes and places that cannot be | grey values, which stand there bare; a list of images that ends early |
| shot file | what the schema refuses, and values that contradict each other | another value that can be |

A film whose SHA-256 stands in its shot file is held against it before anything is read, and then every change is told.
`;
