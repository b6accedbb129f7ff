import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** Width of an element in CSS pixels, kept up to date; 0 before the first layout. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const target = element.current;
    if (target === null) return;
    const measure = () => setWidth(target.clientWidth);
    measure();
    // What is drawn changes the element's height, and must not do so while sizes are being observed.
    let pending = 0;
    const observer = new ResizeObserver(() => {
      cancelAnimationFrame(pending);
      pending = requestAnimationFrame(measure);
    });
    observer.observe(target);
    return () => {
      observer.disconnect();
      cancelAnimationFrame(pending);
    };
  }, [element]);
  return width;
}
