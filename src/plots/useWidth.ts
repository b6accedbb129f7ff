import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** Width of an element in CSS pixels, kept up to date; 0 before the first layout. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const target = element.current;
    if (target === null) return;
    setWidth(target.clientWidth);
    const observer = new ResizeObserver(() => setWidth(target.clientWidth));
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
