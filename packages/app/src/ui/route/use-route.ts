import { useEffect, useState } from 'preact/hooks';

const MOVED = 'furrow:moved';

/** Address of the page that is shown; a link within the page does not change it. */
let shownPath = typeof location === 'undefined' ? '' : location.pathname;

/** The address to show. */
export interface Visit {
  readonly path: string;
  /** Changes each time a page is asked for. */
  readonly visit: number;
  /** Changes each time what is open is to be opened anew: where the same address is asked for again, or a text put there. */
  readonly opening: number;
}

/** How another page is gone to. */
interface GoOptions {
  /** Whether the way back does not lead to the page that is left. */
  readonly replace?: boolean;
  /** Whether what is open there is opened anew. */
  readonly anew?: boolean;
}

/** Shows another page of the app; the same address again starts its page anew. */
export function goTo(path: string, { replace = false, anew = false }: GoOptions = {}): void {
  if (replace) history.replaceState(null, '', path);
  else history.pushState(null, '', path);
  window.dispatchEvent(new CustomEvent<boolean>(MOVED, { detail: anew || location.pathname === shownPath }));
}

/** Changes the address without leaving the page: what is on it now has this address. */
export function nameAddress(path: string): void {
  history.replaceState(null, '', path);
  shownPath = path;
}

/** The page to show. */
export function useRoute(): Visit {
  const [state, setState] = useState<Visit>(() => ({ path: location.pathname, visit: 0, opening: 0 }));
  useEffect(() => {
    const follow = (anew: boolean): void => {
      shownPath = location.pathname;
      setState(({ visit, opening }) => ({
        path: shownPath,
        visit: visit + 1,
        opening: opening + (anew ? 1 : 0),
      }));
    };
    const followLink = (event: Event): void => follow((event as CustomEvent<boolean>).detail);
    const followHistory = (): void => {
      if (location.pathname !== shownPath) follow(false);
    };
    window.addEventListener('popstate', followHistory);
    window.addEventListener(MOVED, followLink);
    return () => {
      window.removeEventListener('popstate', followHistory);
      window.removeEventListener(MOVED, followLink);
    };
  }, []);
  return state;
}
