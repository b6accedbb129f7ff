import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { greyRange } from '../../app/greyRange';
import { leftOutPixels } from '../../app/inspectionReadings';
import type { FrameInspection } from '../../app/resultTypes';
import type { GreyFrame } from '../../core/frame';
import type { ImagePoint, ImageRect } from '../../core/units';
import { showCount, showFixed } from '../../text/show';
import { t } from '../../text/text';
import { Cased } from '../film/Cased';
import { Handle, type NudgeSize } from '../film/Handle';
import { ellipseOf } from '../film/marks';
import { paintFrame } from '../film/picture';
import type { FilmPosition } from '../film/props';
import { LeftOut } from './LeftOut';
import { PixelPicture } from './PixelPicture';
import { cropped, enlargement, frameOfModel, outlinePaths } from './planes';

interface FitPictureProps {
  readonly frame: GreyFrame;
  readonly rect: ImageRect;
  /** Null until it has come, and where there is none. */
  readonly inspection: FrameInspection | null;
  readonly position: FilmPosition | null;
  /** Radius of the ball where no outline is known; px. */
  readonly radius: number | null;
  /** Whether the centre can be moved. */
  readonly movable: boolean;
  onMove(at: ImagePoint): void;
}

/** Keyboard steps of the centre, px. */
const STEPS: Readonly<Record<NudgeSize, number>> = { fine: 0.01, normal: 0.1, coarse: 1 };
/** The ellipse is enlarged to at most this share of the picture's shorter side. */
const ELLIPSE_SHARE = 0.14;
/** Half the centre's cross, CSS px. */
const ARM = 7;

/** The film around the ball, enlarged, with the fitted outline and the centre's uncertainty over it. */
export function FitPicture(props: FitPictureProps) {
  const { frame, rect, inspection, position, radius, movable, onMove } = props;
  const [side, setSide] = useState<'film' | 'model'>('film');
  const [dragged, setDragged] = useState<ImagePoint | null>(null);
  const grabbed = useRef<ImagePoint | null>(null);
  const box = useRef<HTMLElement>(null);
  const model = inspection?.model ?? null;
  const shown = model !== null && side === 'model' ? model : null;

  const [x, y, columns, rows] = rect;
  const crop = useMemo(() => cropped(frame, [x, y, columns, rows]), [frame, x, y, columns, rows]);
  const contrast = useMemo(() => greyRange(crop), [crop]);
  const paint = useMemo(() => {
    const picture = shown === null ? crop : frameOfModel(shown, [x, y, columns, rows], crop);
    return (rgba: Uint8ClampedArray) => paintFrame(picture, contrast, rgba);
  }, [crop, contrast, shown, x, y, columns, rows]);

  // Taken up on the page, the tool is at once in the keyboard's hand.
  useEffect(() => {
    if (!movable || !box.current?.contains(document.activeElement)) return;
    box.current.querySelector<HTMLElement>('.handle')?.focus({ preventScroll: true });
  }, [movable]);

  const found: ImagePoint | null =
    position === null || position.x === null || position.y === null
      ? null
      : [position.x, position.y];
  const centre = dragged ?? found;
  const handleAt = centre ?? [x + (columns - 1) / 2, y + (rows - 1) / 2];
  const room = ELLIPSE_SHARE * Math.min(columns, rows);
  const ellipse =
    position === null || position.ux === null || position.uy === null || position.cov === null
      ? null
      : ellipseOf(position.ux, position.uy, position.cov);
  const factor = ellipse === null ? 1 : enlargement(ellipse.major, room);
  // The centre of a ball cut by the border may lie beyond it.
  const beyond = 0.5 + (radius ?? 0);
  const inside = (at: ImagePoint): ImagePoint => [
    Math.min(Math.max(at[0], x - beyond), x + columns - 1 + beyond),
    Math.min(Math.max(at[1], y - beyond), y + rows - 1 + beyond),
  ];
  const count = inspection === null ? 0 : leftOutPixels(inspection);
  const mark = dragged !== null || position?.manual === true ? 'manual' : 'used';
  const kind = position?.used === false && dragged === null ? 'refused' : mark;

  return (
    <figure ref={box} class={`fit-picture ${movable ? 'fit-picture-movable' : ''}`}>
      <figcaption>
        <strong>{t(shown === null ? 'frames.fit.film' : 'frames.fit.fittedModel')}</strong>
        <fieldset class="row fit-sides">
          <legend class="hidden-text">{t('frames.fit.shown')}</legend>
          {(['film', 'model'] as const).map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={side === one}
              disabled={one === 'model' && model === null}
              onClick={() => setSide(one)}
            >
              {t(`frames.fit.${one}`)}
            </button>
          ))}
        </fieldset>
      </figcaption>
      <PixelPicture
        columns={columns}
        rows={rows}
        label={t(shown === null ? 'frames.fit.filmLabel' : 'frames.fit.modelLabel', {
          frame: frame.index,
          columns,
          rows,
        })}
        paint={paint}
        placeholder=""
        {...(movable && {
          onPress: (left: number, top: number) => onMove(inside([x + left - 0.5, y + top - 0.5])),
        })}
      >
        {(scale) => {
          const place = (at: ImagePoint): readonly [number, number] => [
            (at[0] - x + 0.5) * scale,
            (at[1] - y + 0.5) * scale,
          ];
          const [left, top] = place(handleAt);
          return (
            <>
              <svg
                class="fit-overlay"
                width={columns * scale}
                height={rows * scale}
                aria-hidden="true"
              >
                {inspection?.weight != null && (
                  <LeftOut weight={inspection.weight} columns={columns} scale={scale} />
                )}
                <Outline inspection={inspection} place={place} />
                {centre !== null &&
                  (mark === 'manual' || (inspection?.outline ?? []).length === 0) && (
                    <Ball at={place(centre)} r={(radius ?? 0) * scale} kind={kind} />
                  )}
                {centre !== null && ellipse !== null && dragged === null && (
                  <ellipse
                    class={`fit-ellipse fit-${kind}`}
                    rx={ellipse.major * factor * scale}
                    ry={ellipse.minor * factor * scale}
                    transform={`translate(${left} ${top}) rotate(${(ellipse.angle * 180) / Math.PI})`}
                  />
                )}
                {centre !== null && (
                  <Cased class={`fit-${kind}`} d={crossAt(left, top, kind === 'refused')} />
                )}
              </svg>
              {movable && (
                <Handle
                  left={left}
                  top={top}
                  look="cross"
                  label={t(centre === null ? 'frames.fit.centreOpen' : 'frames.fit.centre', {
                    frame: frame.index,
                  })}
                  valueNow={Math.round(handleAt[0] * 100) / 100}
                  valueText={t('film.place', {
                    x: showFixed(handleAt[0], 2),
                    y: showFixed(handleAt[1], 2),
                  })}
                  onGrab={() => {
                    grabbed.current = handleAt;
                  }}
                  onDrag={(right, down) => {
                    if (grabbed.current === null) return;
                    const [fromX, fromY] = grabbed.current;
                    setDragged(inside([fromX + right / scale, fromY + down / scale]));
                  }}
                  onDrop={() => {
                    grabbed.current = null;
                    setDragged(null);
                    if (dragged !== null) onMove(dragged);
                  }}
                  onNudge={(right, down, size) =>
                    onMove(
                      inside([handleAt[0] + right * STEPS[size], handleAt[1] + down * STEPS[size]]),
                    )
                  }
                />
              )}
            </>
          );
        }}
      </PixelPicture>
      <ul class="fit-keys">
        {(inspection?.outline ?? []).some((one) => one.seen) && (
          <Key class="fit-seen" d="M0 6h22" text={t('frames.fit.seen')} />
        )}
        {(inspection?.outline ?? []).some((one) => !one.seen) && (
          <Key class="fit-unseen" d="M0 6h22" text={t('frames.fit.unseen')} />
        )}
        {position?.manual === true && (
          <Key class="fit-ball fit-manual" d="M0 6h22" text={t('frames.fit.asPlaced')} />
        )}
        {ellipse !== null && (
          <li>
            <svg width="22" height="12" aria-hidden="true">
              <ellipse class={`fit-ellipse fit-${kind}`} cx="11" cy="6" rx="8" ry="4.5" />
            </svg>
            {t('film.key.u', { factor: showCount(factor) })}
          </li>
        )}
        {count > 0 && (
          <li>
            <LeftOutSwatch />
            {t('frames.fit.leftOut', { n: count, number: showCount(count) })}
          </li>
        )}
        <li>
          {t('frames.fit.greys', { low: showCount(contrast.low), high: showCount(contrast.high) })}
        </li>
      </ul>
    </figure>
  );
}

function crossAt(left: number, top: number, refused: boolean): string {
  if (refused) return `M${left - 5} ${top - 5}l10 10m0 -10l-10 10`;
  return `M${left - ARM} ${top}h${2 * ARM}M${left} ${top - ARM}v${2 * ARM}`;
}

interface OutlineProps {
  readonly inspection: FrameInspection | null;
  place(at: ImagePoint): readonly [number, number];
}

function Outline({ inspection, place }: OutlineProps) {
  if (inspection === null) return null;
  const { seen, unseen } = outlinePaths(inspection.outline, place);
  return (
    <>
      <Cased class="fit-unseen" d={unseen} />
      <Cased class="fit-seen" d={seen} />
    </>
  );
}

/** A plain circle of the ball's size: where a person put it, or where the fit has drawn no outline. */
function Ball(props: {
  readonly at: readonly [number, number];
  readonly r: number;
  readonly kind: string;
}) {
  const { at, r, kind } = props;
  if (r <= 0) return null;
  const [left, top] = at;
  const d = `M${left - r} ${top}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
  return <Cased class={`fit-ball fit-${kind}`} d={d} />;
}

function Key(props: { readonly class: string; readonly d: string; readonly text: string }) {
  return (
    <li>
      <svg width="22" height="12" aria-hidden="true" class={props.class}>
        <path class="line" d={props.d} />
      </svg>
      {props.text}
    </li>
  );
}

/** One pixel of zero weight. */
const ONE_LEFT_OUT = new Float32Array(1);

function LeftOutSwatch() {
  return (
    <svg class="fit-swatch" width="22" height="12" aria-hidden="true">
      <LeftOut weight={ONE_LEFT_OUT} columns={1} scale={22} />
    </svg>
  );
}
