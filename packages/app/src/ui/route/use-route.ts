import { useEffect, useState } from 'preact/hooks';
import { type Route, routeOf } from './route.ts';

const MOVED = 'furrow:moved';

/** Address of the page that is shown; a link within the page does not change it. */
let shownPath = typeof location === 'undefined' ? '' : location.pathname;

/** Shows another page of the app; the same address again starts its page anew. */
export function goTo(path: string, replace = false): void {
  if (replace) history.replaceState(null, '', path);
  else history.pushState(null, '', path);
  window.dispatchEvent(new Event(MOVED));
}

/** Changes the address without leaving the page: what is on it now has this address. */
export function nameAddress(path: string): void {
  history.replaceState(null, '', path);
  shownPath = path;
}

/** The page to show, and a number that changes each time one is asked for. */
export function useRoute(): { readonly route: Route; readonly visit: number } {
  const [state, setState] = useState(() => ({ route: routeOf(location.pathname), visit: 0 }));
  useEffect(() => {
    const follow = (): void => {
      shownPath = location.pathname;
      setState(({ visit }) => ({ route: routeOf(shownPath), visit: visit + 1 }));
    };
    const followHistory = (): void => {
      if (location.pathname !== shownPath) follow();
    };
    window.addEventListener('popstate', followHistory);
    window.addEventListener(MOVED, follow);
    return () => {
      window.removeEventListener('popstate', followHistory);
      window.removeEventListener(MOVED, follow);
    };
  }, []);
  return state;
}
