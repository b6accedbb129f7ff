import type { Signal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useWidth } from '../../plots/useWidth';
import { type FilmTransform, fitView, resizeView, type Size } from './view';

/** A flat film keeps room for handles above and below it, CSS px. */
const SMALLEST_HEIGHT = 180;

/** Height of the window, CSS px. */
export function useWindowHeight(): number {
  const [height, setHeight] = useState(() => window.innerHeight);
  useEffect(() => {
    const update = () => setHeight(window.innerHeight);
    window.addEventListener('resize', update);
    return () => window.removeEventListener('resize', update);
  }, []);
  return height;
}

/** Full width; as high as the film then is, within a share of the window's height. */
export function useViewport(area: RefObject<HTMLElement | null>, image: Size, share: number): Size {
  const width = useWidth(area);
  const windowHeight = useWindowHeight();
  return useMemo(() => {
    const whole = (width * image.height) / image.width;
    const height = Math.max(Math.min(whole, windowHeight * share), SMALLEST_HEIGHT);
    return { width, height };
  }, [width, image, windowHeight, share]);
}

/** Keeps the shared transform laid out: fits it when asked, when the footage changes, and on resize. */
export function useLaidOut(
  view: Signal<FilmTransform>,
  image: Size,
  viewport: Size,
): FilmTransform {
  const last = useRef<{ readonly viewport: Size; readonly image: Size } | null>(null);
  const { scale } = view.value;
  useLayoutEffect(() => {
    if (viewport.width === 0) return;
    const before = last.current;
    last.current = { viewport, image };
    const replaced = before !== null && before.image !== image;
    // The window may have another size than when the film was last on the screen.
    const back = before === null && view.peek().fitted;
    if (replaced || back || scale === 0) view.value = fitView(image, viewport);
    else if (before !== null && before.viewport !== viewport) {
      view.value = resizeView(view.peek(), image, before.viewport, viewport);
    }
  }, [view, image, viewport, scale]);
  if (scale > 0) return view.value;
  return viewport.width > 0 ? fitView(image, viewport) : { ...view.value, scale: 1 };
}
