import { useLayoutEffect, useRef } from 'preact/hooks';
import { ballSpan } from '../../app/passage';
import type { GreyFrame } from '../../core/frame';
import { useWidth } from '../../plots/useWidth';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { type Contrast, paintFrame } from '../film/picture';
import type { StreakInstant } from '../streak/props';
import { picturesThatFit, ribbonScale } from './ribbon';

/** CSS px. */
const HEIGHT = 40;
/** Above the pictures: the ball's passage and the instants. */
const MARKS = 9;

/** The film from end to end in small pictures, the ball's passage marked; a slider over it goes to any frame. */
export function FilmRibbon({ instants }: { readonly instants: readonly StreakInstant[] }) {
  const desk = useDesk();
  const { player, scenery, measuring } = desk.session;
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const frameCount = player.frameCount.value;
  const frame = player.current.value;
  const scale = ribbonScale(frameCount, width);
  const span = ballSpan(measuring.positions.value);
  const passage = span === null ? null : scale.cover(span.first, span.last);
  const words =
    span === null
      ? t('stage.controls.now', { frame })
      : t('stage.controls.nowBall', { frame, first: span.first, last: span.last });
  return (
    <div ref={box} class="ribbon" style={{ height: `${HEIGHT + MARKS}px` }}>
      <Pictures width={width} height={HEIGHT} top={MARKS} pictures={scenery.pictures.value} />
      <svg class="ribbon-marks" width={width} height={HEIGHT + MARKS} aria-hidden="true">
        {passage !== null && (
          <>
            <rect class="ribbon-dim" x={0} y={MARKS} width={passage[0]} height={HEIGHT} />
            <rect
              class="ribbon-dim"
              x={passage[1]}
              y={MARKS}
              width={Math.max(0, width - passage[1])}
              height={HEIGHT}
            />
            <path class="ribbon-passage" d={`M${passage[0]} ${MARKS - 4}H${passage[1]}`} />
          </>
        )}
        {instants
          .filter(({ kind }) => kind === 'burst' || kind === 'exit')
          .map(({ kind, frame: at }) => (
            <path
              key={kind}
              class={`ribbon-instant streak-instant-${kind}`}
              d={`M${scale.at(at)} 0V${HEIGHT + MARKS}`}
            />
          ))}
      </svg>
      <input
        type="range"
        class="frame-slider"
        aria-label={t('stage.controls.frame')}
        aria-valuetext={words}
        min={0}
        max={Math.max(0, frameCount - 1)}
        value={frame}
        disabled={frameCount === 0}
        onInput={(event) => desk.pick(event.currentTarget.valueAsNumber)}
      />
    </div>
  );
}

interface PicturesProps {
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly pictures: readonly GreyFrame[];
}

/** As many pictures as stand side by side, each in the stretch of film it shows the middle of. */
function Pictures({ width, height, top, pictures }: PicturesProps) {
  const { session, look } = useDesk();
  const canvas = useRef<HTMLCanvasElement>(null);
  const frameCount = session.player.frameCount.value;
  const greys = look.greys.value;
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || width === 0) return;
    const ratio = Math.min(window.devicePixelRatio, 2);
    context.canvas.width = Math.round(width * ratio);
    context.canvas.height = Math.round(height * ratio);
    context.scale(ratio, ratio);
    const scale = ribbonScale(frameCount, width);
    for (const { picture, left, right } of picturesThatFit(pictures, frameCount, scale, height)) {
      draw(context, picture, greys, left, right - left, height);
    }
  }, [width, height, frameCount, greys, pictures]);
  return (
    <canvas ref={canvas} style={{ top: `${top}px`, width: `${width}px`, height: `${height}px` }} />
  );
}

function draw(
  context: CanvasRenderingContext2D,
  picture: Parameters<typeof paintFrame>[0],
  greys: Contrast | null,
  left: number,
  width: number,
  height: number,
): void {
  const small = new OffscreenCanvas(picture.width, picture.height);
  const inside = small.getContext('2d');
  if (inside === null) return;
  const image = inside.createImageData(picture.width, picture.height);
  paintFrame(picture, greys ?? { low: 0, high: picture.white }, image.data);
  inside.putImageData(image, 0, 0);
  // A hair between pictures, and each whole within its stretch.
  const enlarged = Math.min((width - 1) / picture.width, height / picture.height);
  const [w, h] = [picture.width * enlarged, picture.height * enlarged];
  context.drawImage(small, left + (width - w) / 2, (height - h) / 2, w, h);
}
