import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** Shows its children once the page has been painted, in a task of their own: all at once they would hold it up. */
export function Later({ children }: { readonly children: ComponentChildren }) {
  const [isTime, setIsTime] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setIsTime(true), 0);
    return () => clearTimeout(timer);
  }, []);
  return isTime ? children : null;
}
