import { ExitframeError, type ReasonValues } from '../../core/reason';
import type { CoreOutcome } from './core';

/** What ffmpeg says where it has no decoder, or one that cannot do without the graphics card. */
const NO_DECODER =
  /decoder .*not found|unknown decoder|hardware accelerat|not implemented|unsupported/i;

/** Where decoding stopped: in words ("frame 7 of 90") and as values. */
export interface Reached {
  readonly said: string;
  readonly values: ReasonValues;
}

/** Why decoding stopped short, and at what. `complaint`: what the decoder said of a run that went on to its end. */
export function decodingFailed(
  reached: Reached,
  { exitCode, log }: CoreOutcome,
  complaint: string | null,
): ExitframeError {
  const said = (complaint ?? log.at(-1))?.replace(/ @ 0x[0-9a-f]+/, '') ?? 'it gave no reason';
  const noDecoder = log.find((line) => NO_DECODER.test(line));
  if (noDecoder !== undefined) {
    const why = noDecoder.replace(/ @ 0x[0-9a-f]+/, '');
    return new ExitframeError(
      'undecodable',
      `No decoder here reads this clip: ${why}.`,
      'Convert the clip to FFV1, ProRes or H.264 and open that.',
      { values: { form: 'clip', why } },
    );
  }
  if (exitCode === 0 && complaint === null) {
    return new ExitframeError(
      'truncated',
      `The film ends early: it lists ${reached.said}, but nothing comes out there.`,
      'Copy the clip from the camera again, or leave out its end.',
      { values: { form: 'endsEarly', ...reached.values } },
    );
  }
  return new ExitframeError(
    'decoderFailed',
    `The film could not be decoded at ${reached.said}: ${said}.`,
    'The clip is damaged there: copy it from the camera again, or leave that part out.',
    { values: { form: 'damaged', why: said, ...reached.values } },
  );
}
