import type { VNode } from 'preact';
import { useOpenedJob } from '../job/page/index.ts';
import { forgetDemo } from '../job/state/index.ts';
import { goTo, PageLink } from '../ui/route/index.ts';
import { ownMemory } from '../ui/session/index.ts';
import { PAGES, type PageEntry, PLACES } from './page-table.ts';
import { useJobBase } from './use-job-base.ts';

interface NextStepProps {
  /** The page that is shown. */
  readonly page: PageEntry;
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
}

/** Foot of every page: what the work goes on with, and for a demo job that it is one and how it is put back. */
export function NextStep({ page, demo }: NextStepProps): VNode | null {
  const opened = useOpenedJob();
  const base = useJobBase(demo);
  const bench = opened !== undefined && 'bench' in opened ? opened.bench : undefined;
  const { next } = page;
  if (next === undefined) return null;
  const target = PAGES.find(({ end }) => end === next.end)!;
  const place = PLACES.find((one) => one.place === target.place)!.title;
  const putBack = (): void => {
    forgetDemo(ownMemory(), demo);
    goTo(location.pathname, { replace: true, anew: true });
  };
  return (
    <nav class="next-step" aria-label="The way of the work">
      {page.of === 'job' && bench?.isDemo() === true ? (
        <p class="next-step-demo">
          <span>Demo: an invented yard, rig, run and groove.</span>
          <button type="button" class="quiet" onClick={putBack}>
            Put the demo back
          </button>
        </p>
      ) : null}
      <p class="next-step-way">
        Next:{' '}
        <PageLink to={base.addressOf(target)}>
          {place === target.title ? place : `${place}, ${target.title}`}
        </PageLink>
        <span class="next-step-tells">: {next.tells}</span>
      </p>
    </nav>
  );
}
