import { useEffect } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import { isKitUnsaved, type KitDesk } from './kit-desk.ts';

/** Asks before the page is left with unsaved changes. */
export function KitLeaveGuard({ desk }: { readonly desk: KitDesk }): null {
  const unsaved = useSelected(desk.store, isKitUnsaved);
  useEffect(() => {
    if (!unsaved) return undefined;
    const ask = (event: BeforeUnloadEvent): void => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [unsaved]);
  return null;
}
