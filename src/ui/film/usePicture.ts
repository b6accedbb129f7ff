import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { GreyFrame } from '../../core/frame';
import { type Contrast, paintChange, paintFrame, type Reference } from './picture';

/**
 * Keeps a canvas painted with a frame at native size, or with what it differs by from `against`, where changes of
 * `contrast.high` and more are white.
 */
export function usePicture(
  canvas: RefObject<HTMLCanvasElement | null>,
  frame: GreyFrame | null,
  contrast: Contrast,
  against: Reference | null,
): void {
  const buffer = useRef<ImageData | null>(null);
  const { low, high } = contrast;
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (frame === null || context === null || context === undefined) return;
    const { width, height } = frame;
    if (buffer.current?.width !== width || buffer.current.height !== height) {
      context.canvas.width = width;
      context.canvas.height = height;
      buffer.current = context.createImageData(width, height);
    }
    const { data } = buffer.current;
    if (against === null) paintFrame(frame, { low, high }, data);
    else paintChange(frame, against, high, data);
    context.putImageData(buffer.current, 0, 0);
  }, [canvas, frame, against, low, high]);
}
