import type { VNode } from 'preact';
import { useOpenedJob } from '../job/page/index.ts';
import type { Bench } from '../job/state/index.ts';
import { PageLink } from '../ui/route/index.ts';
import { useSelected } from '../ui/store/index.ts';
import { SettingsControls } from '../ui/theme/index.ts';
import { AccountBar } from './account-bar.tsx';
import { PAGES, PLACES, type Place } from './page-table.ts';
import { placeWords } from './place-words.ts';
import { useJobBase } from './use-job-base.ts';

interface PlaceBarProps {
  /** The place that is shown. */
  readonly at: Place | undefined;
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
}

/** Top of the app, the same on every page: the places in the order of the work, and where the job stands in each. */
export function PlaceBar({ at, demo }: PlaceBarProps): VNode {
  const opened = useOpenedJob();
  const base = useJobBase(demo);
  return (
    <header class="site-header">
      <a class="skip-link" href="#result">
        Skip to the result
      </a>
      <PageLink to="/" class="brand-name">
        <svg class="brand-mark" viewBox="0 0 28 20" aria-hidden="true">
          <path class="brand-plate" d="M0 6h7c2 0 2 9 7 9s5-9 7-9h7v14H0z" />
          <path class="brand-arc" d="M19 0l-5 11" />
        </svg>
        Furrow
      </PageLink>
      <nav class="places" aria-label="Places">
        {PLACES.map(({ place, title }) => {
          const first = PAGES.find((page) => page.place === place)!;
          return (
            <PageLink key={place} to={base.addressOf(first)} class="place" here={place === at}>
              <span class="place-title">{title}</span>
              {opened !== undefined && 'bench' in opened ? (
                <PlaceStatus bench={opened.bench} place={place} />
              ) : (
                <span class="place-status" />
              )}
            </PageLink>
          );
        })}
      </nav>
      <SettingsControls />
      <AccountBar />
    </header>
  );
}

/** Where the open job stands in a place. */
function PlaceStatus({ bench, place }: { readonly bench: Bench; readonly place: Place }): VNode {
  const words = useSelected(bench.store, (state) => placeWords(place, state));
  return <span class="place-status">{words}</span>;
}
