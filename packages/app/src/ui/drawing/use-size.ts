import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Inner size of an element [px]; 0 until it is on the page. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Size of an element, followed as it changes. */
export function useSize<T extends HTMLElement>(): readonly [RefObject<T | null>, Size] {
  const element = useRef<T>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return undefined;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = current;
      setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, []);
  return [element, size];
}
