// The width of an element in whole pixels, followed as it changes.
import { type RefObject, useLayoutEffect, useState } from 'react';

export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const observed = element.current;
    if (observed === null) return;
    const measure = () => setWidth(Math.floor(observed.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(observed);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
