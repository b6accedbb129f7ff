import type { TargetedKeyboardEvent } from 'preact';
import { useId, useMemo, useRef } from 'preact/hooks';
import { FilmKey } from './FilmKey';
import { FilmOverlay } from './FilmOverlay';
import './film.css';
import type { ImagePoint, ImageVector } from '../../core/units';
import { showFixed } from '../../text/show';
import { t } from '../../text/text';
import { useGestures } from './gestures';
import { Handle } from './Handle';
import { HeldFrame } from './HeldFrame';
import { Magnifier } from './Magnifier';
import { frameNear } from './marks';
import { numberRoom, PixelNumbers } from './PixelNumbers';
import { changeAt, pixelAt } from './picture';
import type { FilmViewProps } from './props';
import { ARROW, useEditing } from './useEditing';
import { useMagnifier } from './useMagnifier';
import { usePicture } from './usePicture';
import { useLaidOut, useViewport } from './useViewport';
import {
  fitView,
  panBy,
  pictureStyle,
  pixelView,
  revealPoint,
  toImage,
  toViewport,
  zoomAbout,
} from './view';

/** CSS px. */
const PICK_REACH = 9;
const PAN_STEP = 60;
const ZOOM_STEP = 1.4;
const MAGNIFICATION = 8;
/** A film less drawn out than this has a second frame beside it, another one below. */
const SIDE_BY_SIDE = 2;

const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  PageUp: -10,
  PageDown: 10,
};
const PANS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [PAN_STEP, 0],
  ArrowRight: [-PAN_STEP, 0],
  ArrowUp: [0, PAN_STEP],
  ArrowDown: [0, -PAN_STEP],
};

const ACROSS: ImageVector = [1, 0];

/** The film with everything measured on it; zooms, pans, and lets its geometry be edited. */
export function FilmView(props: FilmViewProps) {
  const { frame, imageWidth, imageHeight, currentFrame, overlays, mode, view } = props;
  const area = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const descriptionId = useId();
  const image = useMemo(
    () => ({ width: imageWidth, height: imageHeight }),
    [imageWidth, imageHeight],
  );
  const viewport = useViewport(area, image, props.largestHeightShare ?? 0.6);
  const transform = useLaidOut(view, image, viewport);

  const against = props.against ?? null;
  const held = props.held ?? null;
  const white = frame?.white ?? 255;
  const low = against === null ? (props.contrast?.low ?? 0) : 0;
  const high = against === null ? (props.contrast?.high ?? white) : (props.changeReach ?? white);
  const contrast = useMemo(() => ({ low, high }), [low, high]);
  usePicture(canvas, frame, contrast, against);

  // A pinch zooms and pans at once: each goes on from what the other left.
  const now = () => (view.peek().scale > 0 ? view.peek() : transform);
  const zoom = (factor: number, left: number, top: number) => {
    const next = zoomAbout(now(), factor, left, top, image, viewport);
    if (Math.abs(next.scale / now().scale - 1) < 1e-6) return false;
    view.value = next;
    return true;
  };
  const pan = (right: number, down: number) => {
    view.value = panBy(now(), right, down, image, viewport);
  };
  const zoomMiddle = (factor: number) => zoom(factor, viewport.width / 2, viewport.height / 2);
  const showWhole = () => {
    view.value = fitView(image, viewport);
  };

  const current = overlays.positions.find((one) => one.frame === currentFrame);
  const centre: ImagePoint | null =
    current === undefined || current.x === null || current.y === null
      ? null
      : [current.x, current.y];
  const pairing = imageWidth / imageHeight < SIDE_BY_SIDE ? 'beside' : 'below';
  const heldLow = props.contrast?.low ?? 0;
  const heldHigh = props.contrast?.high ?? white;
  const heldContrast = useMemo(() => ({ low: heldLow, high: heldHigh }), [heldLow, heldHigh]);
  const showPixels = () => {
    const point = centre ?? toImage(transform, viewport.width / 2, viewport.height / 2);
    view.value = pixelView(point, numberRoom(white, against !== null) + 2, image, viewport);
  };

  const editing = useEditing(props, transform, image);
  const magnifier = useMagnifier(
    (props.magnified ?? false) && mode.kind === 'inspect',
    frame,
    centre,
    transform,
    viewport,
    image,
  );
  const handles = viewport.width > 0 ? editing.handles : [];
  useGestures(area, {
    dragPans: mode.kind === 'inspect',
    zoom,
    pan,
    toolStart: (left, top) => editing.toolStart(toImage(transform, left, top)),
    toolMove: (left, top) => editing.toolMove(toImage(transform, left, top)),
    toolEnd: (kept) => editing.toolEnd(kept),
    click(left, top) {
      const picked = frameNear(overlays.positions, transform, left, top, PICK_REACH);
      if (picked !== null) props.onPickFrame?.(picked);
    },
    hover(left, top) {
      const at = toImage(transform, left, top);
      const pixel = frame === null ? null : pixelAt(frame, at);
      const inside = frame !== null && pixel !== null;
      magnifier?.point(inside ? at : null);
      props.onPixel?.(
        inside
          ? {
              x: Math.round(at[0]),
              y: Math.round(at[1]),
              grey: frame.data[pixel] as number,
              change: changeAt(frame, against, pixel),
            }
          : null,
      );
    },
    leave() {
      magnifier?.point(null);
      props.onPixel?.(null);
    },
  });

  const keys = (event: TargetedKeyboardEvent<HTMLDivElement>) => {
    if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const step = STEPS[event.key];
    const way = PANS[event.key];
    if (event.shiftKey && way !== undefined) pan(...way);
    else if (event.key === '+' || event.key === '=') zoomMiddle(ZOOM_STEP);
    else if (event.key === '-') zoomMiddle(1 / ZOOM_STEP);
    else if (event.key === '0') showWhole();
    else if (event.key === '.') showPixels();
    else if (step !== undefined && props.onStep !== undefined) props.onStep(step);
    else return;
    event.preventDefault();
  };

  const workedOn =
    editing.workedOn ??
    (magnifier && { at: magnifier.at, direction: overlays.muzzle?.axis ?? ACROSS });
  const picture = (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is no place for an image
    <div
      ref={area}
      class={`film film-mode-${mode.kind} ${transform.fitted ? 'film-fitted' : ''}`}
      style={{ height: `${viewport.height}px` }}
      role="group"
      aria-label={t('film.label')}
      aria-describedby={descriptionId}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: zoom, pan and stepping are on its keyboard
      tabIndex={0}
      onKeyDown={keys}
    >
      <p id={descriptionId} class="hidden-text">
        {props.description} {t('film.keys')}
      </p>
      <canvas ref={canvas} hidden={frame === null} style={pictureStyle(transform)} />
      {frame !== null && (
        <PixelNumbers
          frame={frame}
          against={against}
          contrast={contrast}
          view={transform}
          viewport={viewport}
        />
      )}
      {frame === null && <p class="film-placeholder">{props.placeholder ?? ''}</p>}
      <FilmOverlay
        overlays={editing.shown}
        view={transform}
        viewport={viewport}
        currentFrame={currentFrame}
        ellipseFactor={props.ellipseFactor}
        arrow={ARROW}
      />
      {handles.map((handle) => {
        const [left, top] = toViewport(transform, handle.at);
        const [x, y] = handle.at;
        const { onActive, ...events } = editing.eventsOf(handle);
        return (
          <Handle
            key={handle.id}
            left={left}
            top={top}
            look={handle.look}
            label={handle.label}
            valueNow={Math.round(x * 100) / 100}
            valueText={t('film.place', { x: showFixed(x, 2), y: showFixed(y, 2) })}
            {...events}
            onActive={(active) => {
              onActive(active);
              // The keyboard can reach a handle that a zoomed view does not show.
              if (active) view.value = revealPoint(transform, handle.at, image, viewport);
            }}
          />
        );
      })}
      {magnifier !== null && <Handle {...magnifier.handle} />}
      {frame !== null && canvas.current !== null && workedOn !== null && (
        <Magnifier
          frame={frame}
          picture={canvas.current}
          contrast={contrast}
          at={workedOn.at}
          direction={workedOn.direction}
          scale={Math.max(MAGNIFICATION, 2 * transform.scale)}
          side={toViewport(transform, workedOn.at)[0] > viewport.width / 2 ? 'left' : 'right'}
        />
      )}
    </div>
  );
  return (
    <div class="film-block">
      <div class="film-strip">
        <FilmKey
          positions={editing.shown.positions}
          seeds={editing.shown.seeds}
          currentFrame={currentFrame}
          factor={props.ellipseFactor}
        />
        {props.tools}
        <div class="film-buttons">
          <button type="button" aria-label={t('film.zoomIn')} onClick={() => zoomMiddle(ZOOM_STEP)}>
            +
          </button>
          <button
            type="button"
            aria-label={t('film.zoomOut')}
            onClick={() => zoomMiddle(1 / ZOOM_STEP)}
          >
            −
          </button>
          <button
            type="button"
            title={t('film.pixelsTitle')}
            disabled={frame === null}
            onClick={showPixels}
          >
            {t('film.pixels')}
          </button>
          <button type="button" disabled={transform.fitted} onClick={showWhole}>
            {t('film.whole')}
          </button>
        </div>
      </div>
      <div class={held === null ? '' : `film-pair film-pair-${pairing}`}>
        {picture}
        {held !== null && (
          <HeldFrame
            frame={held}
            contrast={heldContrast}
            overlays={editing.shown}
            view={transform}
            viewport={viewport}
            ellipseFactor={props.ellipseFactor}
            gestures={{ zoom, pan }}
            onSwap={() => props.onSwap?.()}
          />
        )}
      </div>
    </div>
  );
}
