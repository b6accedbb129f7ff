import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { GreyFrame } from '../../core/frame';
import type { ImagePoint, ImageVector } from '../../core/units';
import { showFixed } from '../../text/show';
import { t } from '../../text/text';
import { type Contrast, greyAt, profileThrough } from './picture';

export interface MagnifierProps {
  readonly frame: GreyFrame;
  /** The film's picture at native size. */
  readonly picture: HTMLCanvasElement;
  readonly contrast: Contrast;
  readonly at: ImagePoint;
  /** Direction of the grey profile under the inset. */
  readonly direction: ImageVector;
  /** CSS px per image px. */
  readonly scale: number;
  /** The side of the viewport it stands on: away from what is being moved. */
  readonly side: 'left' | 'right';
}

/** CSS px. */
const SIDE = 144;
const PROFILE_HEIGHT = 34;

const place = (value: number) => showFixed(value, 2);

/** An enlarged inset around a point, with a cross at the exact place, its grey value and a profile through it. */
export function Magnifier(props: MagnifierProps) {
  const { frame, picture, contrast, at, direction, scale } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const reach = SIDE / scale / 2;

  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === null || context === undefined) return;
    const ratio = Math.min(window.devicePixelRatio, 2);
    context.canvas.width = SIDE * ratio;
    context.canvas.height = SIDE * ratio;
    context.imageSmoothingEnabled = false;
    // Image pixels reach half a pixel around their centres; the picture's begin at its corner.
    const enlarged = scale * ratio;
    context.setTransform(
      enlarged,
      0,
      0,
      enlarged,
      (reach - at[0] - 0.5) * enlarged,
      (reach - at[1] - 0.5) * enlarged,
    );
    context.drawImage(picture, 0, 0);
  }, [picture, frame, contrast, at, scale, reach]);

  const profile = useMemo(() => {
    const samples = profileThrough(frame, at, direction, reach, 4);
    const greys = samples.map(({ grey }) => grey);
    const lowest = Math.min(...greys);
    // A flat stretch stays flat: noise is not blown up to the full height.
    const span = Math.max(Math.max(...greys) - lowest, (contrast.high - contrast.low) / 8, 1e-9);
    const left = (offset: number) => (offset + reach) * scale;
    const top = (grey: number) =>
      PROFILE_HEIGHT - 3 - ((grey - lowest) / span) * (PROFILE_HEIGHT - 6);
    return samples
      .map(({ offset, grey }) => `${left(offset).toFixed(1)} ${top(grey).toFixed(1)}`)
      .join(' ');
  }, [frame, at, direction, reach, scale, contrast]);

  const middle = SIDE / 2;
  return (
    <div class={`magnifier magnifier-${props.side}`} aria-hidden="true">
      <canvas ref={canvas} style={{ width: `${SIDE}px`, height: `${SIDE}px` }} />
      <svg class="magnifier-cross" aria-hidden="true" width={SIDE} height={SIDE}>
        {['cased', 'line'].map((stroke) => (
          <path
            key={stroke}
            class={stroke}
            d={`M0 ${middle}H${middle - 6}M${middle + 6} ${middle}H${SIDE}M${middle} 0V${middle - 6}M${middle} ${middle + 6}V${SIDE}`}
          />
        ))}
        <circle class="magnifier-dot" cx={middle} cy={middle} r="1.25" />
      </svg>
      <svg class="magnifier-profile" aria-hidden="true" width={SIDE} height={PROFILE_HEIGHT}>
        <path class="magnifier-middle" d={`M${middle} 0V${PROFILE_HEIGHT}`} />
        <polyline points={profile} />
      </svg>
      <output>
        <span>x {place(at[0])}</span>
        <span>y {place(at[1])}</span>
        <span>{t('film.magnifier.grey', { grey: greyAt(frame, at) ?? '–' })}</span>
      </output>
    </div>
  );
}
