import { useLayoutEffect, useRef } from 'preact/hooks';
import type { GreyFrame } from '../../core/frame';
import { type Contrast, changeAt, type Reference } from './picture';
import type { FilmTransform, Size } from './view';

interface PixelNumbersProps {
  readonly frame: GreyFrame;
  readonly against: Reference | null;
  readonly contrast: Contrast;
  readonly view: FilmTransform;
  readonly viewport: Size;
}

/** Text height, CSS px, and the room a digit takes. */
const TEXT = 11;
const DIGIT = 6.6;
/** Pixels brighter than this share of the way to white carry dark figures. */
const BRIGHT = 0.5;

/** CSS px a pixel must measure before its number fits into it. */
export function numberRoom(white: number, signed: boolean): number {
  const digits = String(Math.round(white)).length + (signed ? 1 : 0);
  return Math.max(22, digits * DIGIT + 4);
}

/** The grey value, or the change, written into every pixel once there is room; a grid between them. */
export function PixelNumbers(props: PixelNumbersProps) {
  const { frame, view, viewport, against } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const shown = view.scale >= numberRoom(frame.white, against !== null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (shown && context) draw(context, props);
  });
  if (!shown) return null;
  return (
    <canvas
      ref={canvas}
      class="pixel-numbers"
      style={{ width: `${viewport.width}px`, height: `${viewport.height}px` }}
    />
  );
}

function draw(context: CanvasRenderingContext2D, props: PixelNumbersProps): void {
  const { frame, against, contrast, view, viewport } = props;
  const { scale, x0, y0 } = view;
  const ratio = Math.min(window.devicePixelRatio, 2);
  context.canvas.width = Math.round(viewport.width * ratio);
  context.canvas.height = Math.round(viewport.height * ratio);
  context.scale(ratio, ratio);
  context.font = `${TEXT}px ui-monospace, "DejaVu Sans Mono", monospace`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  const range = (start: number, length: number, size: number) => [
    Math.max(0, Math.floor(start + 0.5)),
    Math.min(size - 1, Math.ceil(start + length / scale - 0.5)),
  ];
  const [left = 0, right = -1] = range(x0, viewport.width, frame.width);
  const [top = 0, bottom = -1] = range(y0, viewport.height, frame.height);
  for (let y = top; y <= bottom; y++) {
    for (let x = left; x <= right; x++) {
      const pixel = y * frame.width + x;
      const grey = frame.data[pixel] as number;
      const change = changeAt(frame, against, pixel);
      const share =
        change === null
          ? (grey - contrast.low) / Math.max(contrast.high - contrast.low, Number.EPSILON)
          : 0.5 + change / (2 * contrast.high);
      context.fillStyle = share > BRIGHT ? '#000' : '#fff';
      const text = change === null ? String(grey) : signed(change);
      context.fillText(text, (x - x0) * scale, (y - y0) * scale);
    }
  }
  context.strokeStyle = 'rgb(127 127 127 / 0.45)';
  context.beginPath();
  for (let x = left; x <= right + 1; x++) {
    const at = Math.round((x - 0.5 - x0) * scale) + 0.5;
    context.moveTo(at, (top - 0.5 - y0) * scale);
    context.lineTo(at, (bottom + 0.5 - y0) * scale);
  }
  for (let y = top; y <= bottom + 1; y++) {
    const at = Math.round((y - 0.5 - y0) * scale) + 0.5;
    context.moveTo((left - 0.5 - x0) * scale, at);
    context.lineTo((right + 0.5 - x0) * scale, at);
  }
  context.stroke();
}

/** With its sign, a true minus. */
export const signed = (value: number): string =>
  value > 0 ? `+${value}` : value < 0 ? `−${-value}` : '0';
