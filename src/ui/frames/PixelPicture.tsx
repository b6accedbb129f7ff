import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { useWidth } from '../../plots/useWidth';

interface PixelPictureProps {
  /** Size in pixels. */
  readonly columns: number;
  readonly rows: number;
  /** Says in a sentence what is seen. */
  readonly label: string;
  /** Writes `4 * columns * rows` bytes; null: nothing to paint yet. Painted anew when it changes. */
  readonly paint: ((rgba: Uint8ClampedArray) => void) | null;
  /** Stands where there is nothing to paint. */
  readonly placeholder: ComponentChildren;
  onPress?(x: number, y: number): void;
  /** Drawn over it, `scale` CSS px a pixel; the first pixel's corner is the origin. */
  readonly children?: (scale: number) => ComponentChildren;
}

/** A larger pixel shows nothing new, CSS px. */
const LARGEST_SCALE = 28;

/** A few pixels, each a square, as large as the width allows. */
export function PixelPicture(props: PixelPictureProps) {
  const { columns, rows, label, paint, placeholder, onPress, children } = props;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const width = useWidth(box);
  const scale = Math.min(width / Math.max(columns, rows), LARGEST_SCALE);

  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (paint === null || context === null || context === undefined) return;
    context.canvas.width = columns;
    context.canvas.height = rows;
    const picture = context.createImageData(columns, rows);
    paint(picture.data);
    context.putImageData(picture, 0, 0);
  }, [paint, columns, rows]);

  return (
    <div ref={box} class="pixel-box">
      {paint === null ? (
        <div class="pixel-placeholder">{placeholder}</div>
      ) : (
        <div
          class="pixel-picture"
          style={{ width: `${columns * scale}px`, height: `${rows * scale}px` }}
          onPointerDown={(event) => {
            if (onPress === undefined || event.button !== 0 || !event.isPrimary) return;
            const corner = event.currentTarget.getBoundingClientRect();
            onPress((event.clientX - corner.left) / scale, (event.clientY - corner.top) / scale);
          }}
        >
          <canvas ref={canvas} role="img" aria-label={label} />
          {scale > 0 && children?.(scale)}
        </div>
      )}
    </div>
  );
}
