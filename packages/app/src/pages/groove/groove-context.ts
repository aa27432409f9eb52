import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import type { GrooveDesk } from './groove-desk.ts';
import type { GrooveState } from './groove-state.ts';

/** Hands what was measured to every component of its page. */
export const GrooveContext = createContext<GrooveDesk | undefined>(undefined);

/** What was measured of the groove. */
export function useGrooveDesk(): GrooveDesk {
  const desk = useContext(GrooveContext);
  if (desk === undefined) throw new Error('a component of the groove stands outside of it');
  return desk;
}

/** What a component needs of it. */
export function useGroove<Selected>(select: (state: GrooveState) => Selected): Selected {
  return useSelected(useGrooveDesk().store, select);
}
