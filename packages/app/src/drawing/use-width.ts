import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Width of an element, followed as it changes [px]; 0 until it is on the page. */
export function useWidth<T extends HTMLElement>(): readonly [RefObject<T | null>, number] {
  const element = useRef<T>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return undefined;
    const measure = (): void => setWidth(Math.floor(current.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, []);
  return [element, width];
}
