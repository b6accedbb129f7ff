import { codecName } from '../core/codecs';
import type { Reason, ReasonValues } from '../core/reason';

/** Codecs browsers decode at all; the rest none does. */
const IN_BROWSERS: readonly string[] = ['avc', 'hevc', 'vp8', 'vp9', 'av1'];
/** Containers whose frames can be handed to a browser's decoder. */
const READABLE: readonly string[] = ['mp4', 'mov', 'mkv', 'webm'];

/** Why a decoder was taken; the form tells which of the sentences it is. */
export const chosenFor = (form: string, message: string, values: ReasonValues = {}): Reason => ({
  code: 'decoderChosen',
  message,
  values: { form, ...values },
});

/** Why the browser decodes a film. */
export function whyBrowser(codec: string): Reason {
  const name = codecName(codec);
  return chosenFor('browser', `This browser decodes ${name} itself.`, { codec: name });
}

/** Why ffmpeg and not the browser decodes a film. */
export function whyFfmpeg(container: string, codec: string): Reason {
  const values = { codec: codecName(codec), container: container.toUpperCase() };
  if (!IN_BROWSERS.includes(codec)) {
    return container === codec
      ? chosenFor('codec', `No browser decodes ${values.codec} frame by frame.`, values)
      : chosenFor('codecIn', `No browser decodes ${values.codec} in ${values.container}.`, values);
  }
  return READABLE.includes(container)
    ? chosenFor('film', `This browser does not decode this ${values.codec} film.`, values)
    : chosenFor('container', `No browser reads ${values.container} frame by frame.`, values);
}

/** ffmpeg's names of containers are lists; ours are those of the files. */
export function containerName(format: string, fileName: string): string {
  const isMov = /\.(mov|qt)$/i.test(fileName);
  if (format.startsWith('mov,')) return isMov ? 'mov' : 'mp4';
  if (format.startsWith('matroska')) return /\.webm$/i.test(fileName) ? 'webm' : 'mkv';
  return format.split(',')[0] ?? format;
}

/** ffmpeg's codec names where ours differ. */
export const codecOf = (ffmpegName: string): string => (ffmpegName === 'h264' ? 'avc' : ffmpegName);
