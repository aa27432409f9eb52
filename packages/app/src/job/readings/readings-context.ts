import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import type { ReadingsDesk, ReadingsState } from './readings-desk.ts';

/** Hands what was run and gauged on the job to every component of its page. */
export const ReadingsContext = createContext<ReadingsDesk | undefined>(undefined);

/** What was run and gauged on the job. */
export function useReadingsDesk(): ReadingsDesk {
  const desk = useContext(ReadingsContext);
  if (desk === undefined) throw new Error('a component of the readings stands outside of them');
  return desk;
}

/** What a component needs of it. */
export function useReadings<Selected>(select: (state: ReadingsState) => Selected): Selected {
  return useSelected(useReadingsDesk().store, select);
}
