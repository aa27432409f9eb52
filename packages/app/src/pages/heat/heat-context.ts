import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import type { HeatDesk } from './heat-desk.ts';
import type { HeatState } from './heat-state.ts';

/** Hands the heat of the job to every component of its page. */
export const HeatContext = createContext<HeatDesk | undefined>(undefined);

/** The heat of the job. */
export function useHeatDesk(): HeatDesk {
  const desk = useContext(HeatContext);
  if (desk === undefined) throw new Error('a component of the heat stands outside of it');
  return desk;
}

/** What a component needs of the heat. */
export function useHeat<Selected>(select: (state: HeatState) => Selected): Selected {
  return useSelected(useHeatDesk().store, select);
}
