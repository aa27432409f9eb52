import type { ComponentType, VNode } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { JobKeeper, useOpenedJob } from '../job/page/index.ts';
import { DEMO_JOB } from '../job/state/index.ts';
import { isUnsaved } from '../sheet/keep/index.ts';
import { useRoute } from '../ui/route/index.ts';
import { PageContext, type ShownPage, Waiting } from '../ui/site/index.ts';
import { appStanding } from './app-update.ts';
import { DeviceBar } from './device-bar.tsx';
import { NextStep } from './next-step.tsx';
import type { PageEntry, PageProps } from './page-table.ts';
import { PlaceBar } from './place-bar.tsx';
import { PlaceTabs } from './place-tabs.tsx';
import { type JobAddress, routeOf } from './route-of.ts';

interface AppProps {
  /** The server is reached after it was not. */
  readonly onReachedAgain: () => void;
}

/** The frame of the app, and in it the page that the address names. */
export function App({ onReachedAgain }: AppProps): VNode {
  const { path, visit, opening } = useRoute();
  const route = useMemo(() => routeOf(path), [path]);
  // a page of the shop leads back to the job that was shown last
  const last = useRef<JobAddress>({});
  if (route?.job !== undefined) last.current = route.job;
  const { id, demo = DEMO_JOB } = last.current;
  const page = route?.page;
  const shown = useMemo<ShownPage>(
    () => ({
      title: page?.title ?? 'Nothing here',
      titled: page?.named === true ? 'job' : 'page and job',
      end: page?.end ?? '',
      tabs: page === undefined ? null : <PlaceTabs page={page} demo={demo} />,
    }),
    [page, demo],
  );
  const job = route?.job === undefined ? undefined : { id, demo, opening, visit };
  return (
    <PageContext.Provider value={shown}>
      <JobKeeper job={job}>
        <PlaceBar at={page?.place} demo={demo} />
        <DeviceBar demo={demo} onReachedAgain={onReachedAgain} />
        <TakeUp visit={visit} />
        {page === undefined ? (
          <Waiting text="There is no page at this address." trouble />
        ) : (
          <LoadedPage
            key={page.of === 'shop' ? visit : `${page.end} ${id ?? demo} ${opening}`}
            page={page}
            id={id}
            demo={demo}
          />
        )}
        {page === undefined ? null : <NextStep page={page} demo={demo} />}
      </JobKeeper>
    </PageContext.Provider>
  );
}

/** Takes a newer version up with the next page that is opened, unless that leaves something to be asked for. */
function TakeUp({ visit }: { readonly visit: number }): null {
  const opened = useOpenedJob();
  const first = useRef(visit);
  useEffect(() => {
    if (visit === first.current || !appStanding.get().newer) return;
    const unsaved = opened !== undefined && 'bench' in opened && isUnsaved(opened.bench.store.get());
    if (!unsaved) location.reload();
  }, [visit]);
  return null;
}

/** A page whose code is brought in when it is first shown. */
function LoadedPage({ page, ...props }: PageProps & { readonly page: PageEntry }): VNode {
  const [loaded, setLoaded] = useState<{ readonly component: ComponentType<PageProps> } | 'failed'>();
  useEffect(() => {
    let left = false;
    page.load().then(
      (component) => {
        if (!left) setLoaded({ component });
      },
      () => {
        if (!left) setLoaded('failed');
      },
    );
    return () => {
      left = true;
    };
  }, [page]);
  if (loaded === undefined) return <Waiting text="Opening the page." />;
  if (loaded === 'failed') {
    return <Waiting text="The page could not be loaded. Is Furrow still running on this computer?" trouble />;
  }
  const Page = loaded.component;
  return <Page {...props} />;
}
