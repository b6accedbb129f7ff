import { useRef } from 'preact/hooks';
import type { GreyFrame } from '../../core/frame';
import { t } from '../../text/text';
import { FilmOverlay } from './FilmOverlay';
import { type GestureTarget, useGestures } from './gestures';
import type { Contrast } from './picture';
import type { FilmOverlays } from './props';
import { ARROW } from './useEditing';
import { usePicture } from './usePicture';
import { type FilmTransform, pictureStyle, type Size } from './view';

interface HeldFrameProps {
  readonly frame: GreyFrame;
  readonly contrast: Contrast;
  readonly overlays: FilmOverlays;
  readonly view: FilmTransform;
  readonly viewport: Size;
  readonly ellipseFactor: number;
  readonly gestures: Pick<GestureTarget, 'zoom' | 'pan'>;
  onSwap(): void;
}

/** A second frame beside the one shown, moved and enlarged along with it. */
export function HeldFrame(props: HeldFrameProps) {
  const { frame, contrast, view, viewport, gestures } = props;
  const area = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  usePicture(canvas, frame, contrast, null);
  const nothing = () => {};
  useGestures(area, {
    ...gestures,
    dragPans: true,
    toolStart: nothing,
    toolMove: nothing,
    toolEnd: nothing,
    click: nothing,
    hover: nothing,
    leave: nothing,
  });
  return (
    <section
      ref={area}
      class={`film film-mode-inspect film-held ${view.fitted ? 'film-fitted' : ''}`}
      style={{ height: `${viewport.height}px` }}
      aria-label={t('film.held.label', { frame: frame.index })}
    >
      <canvas ref={canvas} style={pictureStyle(view)} />
      <FilmOverlay
        overlays={props.overlays}
        view={view}
        viewport={viewport}
        currentFrame={frame.index}
        ellipseFactor={props.ellipseFactor}
        arrow={ARROW}
      />
      <div class="film-held-name">
        {t('film.held.name', { frame: frame.index })}
        <button type="button" onClick={props.onSwap}>
          {t('film.held.swap')}
        </button>
      </div>
    </section>
  );
}
