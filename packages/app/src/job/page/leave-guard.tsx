import { useEffect } from 'preact/hooks';
import { isUnsaved, useBenchState } from '../state/index.ts';

/** Asks before the page is left with unsaved changes. */
export function LeaveGuard(): null {
  const unsaved = useBenchState(isUnsaved);
  useEffect(() => {
    if (!unsaved) return undefined;
    const ask = (event: BeforeUnloadEvent): void => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [unsaved]);
  return null;
}
