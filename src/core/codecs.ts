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
