import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../ui/store/index.ts';
import type { Sheet, SheetState } from './sheet.ts';

/** Hands the file that is filled in to every component of its form. */
export const SheetContext = createContext<Sheet | undefined>(undefined);

/** The file that is filled in. */
export function useSheet(): Sheet {
  const sheet = useContext(SheetContext);
  if (sheet === undefined) throw new Error('a component of the form stands outside of it');
  return sheet;
}

/** What a component needs of the file that is filled in. */
export function useSheetState<Selected>(select: (state: SheetState) => Selected): Selected {
  return useSelected(useSheet().store, select);
}
