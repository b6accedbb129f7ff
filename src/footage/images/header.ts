import { lettersAt, viewOf } from '../bytes';
import { bmpHeader } from './bmp';
import { jpegHeader } from './jpeg';
import { pngHeader } from './png';
import { firstDirectory } from './tiff';
import type { ImageFormat, ImageHeader } from './types';

/** By the first bytes; null: none of the image formats read here. */
export async function imageFormat(blob: Blob): Promise<ImageFormat | null> {
  const view = await viewOf(blob, 0, 8);
  if (view.byteLength < 8) return null;
  if (view.getUint32(0) === 0x89504e47) return 'png';
  if (view.getUint16(0) === 0xffd8) return 'jpeg';
  if (lettersAt(view, 0, 2) === 'BM') return 'bmp';
  const order = lettersAt(view, 0, 2);
  const is42 = (order === 'II' || order === 'MM') && view.getUint16(2, order === 'II') === 42;
  return is42 ? 'tiff' : null;
}

/** Null where the header is damaged. */
export async function imageHeader(blob: Blob, format: ImageFormat): Promise<ImageHeader | null> {
  try {
    if (format === 'png') return await pngHeader(blob);
    if (format === 'bmp') return await bmpHeader(blob);
    if (format === 'jpeg') return await jpegHeader(blob);
    return await firstDirectory(blob);
  } catch (error) {
    if (error instanceof RangeError) return null; // read past the end of what is there
    throw error;
  }
}
