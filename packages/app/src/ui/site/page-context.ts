import { createContext, type VNode } from 'preact';
import { useContext } from 'preact/hooks';

/** What the shell tells a page of itself. */
export interface ShownPage {
  /** Its title, from the one table of pages. */
  readonly title: string;
  /** What the title of the job is told as on it: `Heat: Tank seam`, or the job's title alone. */
  readonly titled: 'job' | 'page and job';
  /** What its address ends with; empty for the bench. */
  readonly end: string;
  /** The way to the other pages of its place. */
  readonly tabs: VNode | null;
}

const NOWHERE: ShownPage = { title: 'Furrow', titled: 'job', end: '', tabs: null };

/** Hands the page's entry of the table of pages to what stands on it. */
export const PageContext = createContext<ShownPage>(NOWHERE);

/** The page that is shown. */
export function usePage(): ShownPage {
  return useContext(PageContext);
}
