/** What people call a codec, by mediabunny's and ffmpeg's names. */
const CODECS: Readonly<Record<string, string>> = {
  avc: 'H.264',
  hevc: 'HEVC',
  vp8: 'VP8',
  vp9: 'VP9',
  av1: 'AV1',
  mjpeg: 'Motion-JPEG',
  prores: 'ProRes',
  ffv1: 'FFV1',
  gif: 'GIF',
  rawvideo: 'uncompressed video',
  huffyuv: 'HuffYUV',
  dnxhd: 'DNxHD',
  cfhd: 'CineForm',
  mpeg4: 'MPEG-4 part 2',
};
export const codecName = (codec: string): string => CODECS[codec] ?? codec;

/** Codecs browsers decode at all; the rest none does. */
const IN_BROWSERS: readonly string[] = ['avc', 'hevc', 'vp8', 'vp9', 'av1'];
/** Containers whose frames can be handed to a browser's decoder. */
const READABLE: readonly string[] = ['mp4', 'mov', 'mkv', 'webm'];

/** Why ffmpeg and not the browser decodes a film. */
export function whyFfmpeg(container: string, codec: string): string {
  const name = codecName(codec);
  if (!IN_BROWSERS.includes(codec)) {
    return container === codec
      ? `No browser decodes ${name} frame by frame.`
      : `No browser decodes ${name} in ${container.toUpperCase()}.`;
  }
  return READABLE.includes(container)
    ? `This browser does not decode this ${name} film.`
    : `No browser reads ${container.toUpperCase()} frame by frame.`;
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
