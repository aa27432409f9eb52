import type { VNode } from 'preact';
import { PageLink } from '../ui/route/index.ts';
import { useSession } from '../ui/session/index.ts';
import { PAGES, type PageEntry } from './page-table.ts';
import { useJobBase } from './use-job-base.ts';

interface PlaceTabsProps {
  /** The page that is shown. */
  readonly page: PageEntry;
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
}

/** The way between the pages of one place. */
export function PlaceTabs({ page, demo }: PlaceTabsProps): VNode {
  const base = useJobBase(demo);
  const person = useSession().signed_in;
  const isFor = ({ for: whom }: PageEntry): boolean =>
    whom === undefined || (person !== null && (whom === 'signed in' || person.role === 'administrator'));
  const pages = PAGES.filter((one) => one.place === page.place && isFor(one));
  return (
    <nav class="place-tabs" aria-label="Pages of this place">
      {pages.map((one) =>
        one === page ? (
          <span key={one.end} aria-current="page">
            {one.title}
          </span>
        ) : (
          <PageLink key={one.end} to={base.addressOf(one)}>
            {one.title}
          </PageLink>
        ),
      )}
    </nav>
  );
}
