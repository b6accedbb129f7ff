import { ExitframeError } from '../../core/reason';

/** What ffmpeg says where it has no decoder, or one that cannot do without the graphics card. */
const NO_DECODER =
  /decoder .*not found|unknown decoder|hardware accelerat|not implemented|unsupported/i;

/** Why decoding stopped short, and at what ("frame 7 of 90"). */
export function decodingFailed(
  reached: string,
  exitCode: number,
  log: readonly string[],
): ExitframeError {
  const said = log.at(-1)?.replace(/ @ 0x[0-9a-f]+/, '') ?? 'it gave no reason';
  const noDecoder = log.find((line) => NO_DECODER.test(line));
  if (noDecoder !== undefined) {
    return new ExitframeError(
      'undecodable',
      `No decoder here reads this clip: ${noDecoder.replace(/ @ 0x[0-9a-f]+/, '')}.`,
      'Convert the clip to FFV1, ProRes or H.264 and open that.',
    );
  }
  if (exitCode === 0) {
    return new ExitframeError(
      'truncated',
      `The film ends early: it lists ${reached}, but nothing comes out there.`,
      'Copy the clip from the camera again, or leave out its end.',
    );
  }
  return new ExitframeError(
    'decoderFailed',
    `The film could not be decoded at ${reached}: ${said}.`,
    'The clip is damaged there: copy it from the camera again, or leave that part out.',
  );
}
