import type { GreyFrame } from '../../core/frame';
import { type Contrast, paintFrame } from '../film/picture';

/** From here on a picture is packed with a little loss, pixels: a film frame of a phone would be megabytes. */
const LOSSLESS_PIXELS = 2 ** 19;
const QUALITY = 0.9;

/** A frame as the address of a picture that holds all of it, `contrast.low` black and `contrast.high` white. */
export function pictureUrl(frame: GreyFrame, contrast: Contrast): string {
  const canvas = document.createElement('canvas');
  canvas.width = frame.width;
  canvas.height = frame.height;
  const context = canvas.getContext('2d');
  if (context === null) return '';
  const picture = context.createImageData(frame.width, frame.height);
  paintFrame(frame, contrast, picture.data);
  context.putImageData(picture, 0, 0);
  return frame.width * frame.height <= LOSSLESS_PIXELS
    ? canvas.toDataURL('image/png')
    : canvas.toDataURL('image/jpeg', QUALITY);
}
