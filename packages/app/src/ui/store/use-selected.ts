import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Store } from './store.ts';

/**
 * What a component needs of a store; it is drawn again only when that changes, so that a key pressed in one field
 * does not draw the other seventy.
 */
export function useSelected<State, Selected>(
  store: Pick<Store<State>, 'get' | 'listen'>,
  select: (state: State) => Selected,
): Selected {
  const [, redraw] = useState(0);
  const selected = select(store.get());
  const latest = useRef({ select, selected });
  latest.current = { select, selected };
  useLayoutEffect(() => {
    const check = (): void => {
      const { current } = latest;
      if (!Object.is(current.select(store.get()), current.selected)) redraw((count) => count + 1);
    };
    check();
    return store.listen(check);
  }, [store]);
  return selected;
}
