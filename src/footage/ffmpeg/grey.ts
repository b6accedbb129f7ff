/** How grey values are got from a decoder's pixel format. */
export interface GreyPlan {
  /** ffmpeg filters that end in a plane of `gray` or little-endian `grayNle`. */
  readonly filter: string;
  readonly bytesPerSample: 1 | 2;
  /** Bits a grey value has; the white level is the largest number they hold. */
  readonly bitDepth: number;
  /** Luma as the film holds it, and not weighted from red, green and blue. */
  readonly isCoded: boolean;
}

/** Formats with luma in between other samples, and the planar one that holds the same numbers. */
const PLANAR: Readonly<Record<string, string>> = {
  yuyv422: 'yuv422p',
  uyvy422: 'yuv422p',
  yvyu422: 'yuv422p',
  uyyvyy411: 'yuv411p',
  nv12: 'yuv420p',
  nv21: 'yuv420p',
  nv16: 'yuv422p',
  nv24: 'yuv444p',
  nv42: 'yuv444p',
  p010le: 'yuv420p10le',
  p016le: 'yuv420p16le',
  p210le: 'yuv422p10le',
  p216le: 'yuv422p16le',
  y210le: 'yuv422p10le',
  ayuv64le: 'yuva444p16le',
};

/** Bits of formats whose name says them otherwise. */
const RGB_BITS: Readonly<Record<string, number>> = { rgb48: 16, bgr48: 16, rgba64: 16, bgra64: 16 };
/** Depths ffmpeg has a grey format for. */
const GREY_DEPTHS = [8, 9, 10, 12, 14, 16];

const greyFormat = (bits: number) => (bits === 8 ? 'gray' : `gray${bits}le`);

const plan = (filter: string, bits: number, isCoded: boolean): GreyPlan => ({
  filter: `${filter}format=${greyFormat(bits)}`,
  bytesPerSample: bits === 8 ? 1 : 2,
  bitDepth: bits,
  isCoded,
});

/**
 * Luma is taken as coded where the format has it (`format=gray` would stretch 16..235 to 0..255);
 * only then is the byte order set. Red, green and blue are weighted into full-range luma by ITU-R
 * BT.601, which keeps a grey picture's values as they are (to 6 in 65535 for 16 bits a colour).
 * Null: a format with no grey values that could be kept, such as floating point.
 */
export function greyPlan(pixelFormat: string): GreyPlan | null {
  const planar = PLANAR[pixelFormat];
  if (planar !== undefined) {
    const inner = greyPlan(planar);
    return inner && { ...inner, filter: `format=${planar},${inner.filter}` };
  }
  const luma = /^(?:yuva?\d{3}p|yuvj\d{3}p|gray|y[a]?)(\d+)?(?:le|be)?$/.exec(pixelFormat);
  if (luma) {
    const bits = Number(luma[1] ?? 8);
    if (!GREY_DEPTHS.includes(bits)) return null;
    return plan(pixelFormat.startsWith('gray') ? '' : 'extractplanes=y,', bits, true);
  }
  const name = pixelFormat.replace(/[lb]e$/, '');
  const planes = /^gbra?p(\d+)$/.exec(name);
  const bits = RGB_BITS[name] ?? Number(planes?.[1] ?? 8);
  const known =
    /^(gbra?p|rgb24|bgr24|[rgbax0]{4}|pal8|mono[bw]|rgb(555|565|444)|bgr(555|565|444))$/;
  if (planes || RGB_BITS[name] !== undefined || known.test(name)) {
    return GREY_DEPTHS.includes(bits) ? plan('', bits, false) : null;
  }
  return null;
}
