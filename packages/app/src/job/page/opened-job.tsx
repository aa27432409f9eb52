import { type ComponentChildren, createContext, type VNode } from 'preact';
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { SheetContext } from '../../sheet/index.ts';
import { isUnsaved, useLeaveGuard } from '../../sheet/keep/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { startPlanWorker } from '../../work/index.ts';
import { type Bench, BenchContext, openBench, startOf } from '../state/index.ts';
import { AfterSaving } from './after-saving.tsx';
import { takeFromShop } from './take-from-shop.ts';

/** The job that is open, or why it cannot be opened. */
export type OpenedJob = { readonly bench: Bench } | { readonly trouble: string };

const OpenedContext = createContext<OpenedJob | undefined>(undefined);

/** The job that is open; undefined while it is on its way. */
export function useOpenedJob(): OpenedJob | undefined {
  return useContext(OpenedContext);
}

/** What of the address matters to the job. */
interface JobVisit {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string;
  /** Changes when the job is to be opened anew. */
  readonly opening: number;
  /** Changes with each page that is asked for. */
  readonly visit: number;
}

interface Kept extends Pick<JobVisit, 'id' | 'demo' | 'opening'> {
  readonly opened: OpenedJob;
}

interface JobKeeperProps {
  /** The job that the page is of; undefined on a page of the shop, where the one that is open stays open. */
  readonly job: JobVisit | undefined;
  readonly children: ComponentChildren;
}

/**
 * Opens the job that the address names and keeps it open from page to page: its text, what was read of it and its plan
 * stay as they are until another job is asked for. Kit and trials are asked for with each page, and planned with if they
 * changed.
 */
export function JobKeeper({ job, children }: JobKeeperProps): VNode {
  const [kept, setKept] = useState<Kept>();
  const latest = useRef<Kept | undefined>(undefined);
  /** The visit that what is open was opened for, or found to be right for. */
  const settled = useRef<number | undefined>(undefined);
  const units = useUnits();
  const shownUnits = useRef(units);
  shownUnits.current = units;
  const keep = (next: Kept | undefined): void => {
    const before = latest.current?.opened;
    if (before !== undefined && 'bench' in before) before.bench.close();
    latest.current = next;
    setKept(next);
  };
  useEffect(() => {
    if (job === undefined) return undefined;
    const now = latest.current;
    if (now !== undefined && 'bench' in now.opened && isOf(now, job)) {
      settled.current = job.visit;
      return takeFromShop(now.opened.bench);
    }
    let left = false;
    settled.current = undefined;
    keep(undefined);
    void startOf(job.id, job.demo).then((start) => {
      if (left) return;
      const opened =
        typeof start === 'string'
          ? { trouble: start }
          : {
              bench: openBench(
                { ...start, units: shownUnits.current },
                { startWorker: startPlanWorker, memory: ownMemory() },
              ),
            };
      settled.current = job.visit;
      keep({ opened, id: job.id, demo: job.demo, opening: job.opening });
    });
    return () => {
      left = true;
    };
  }, [job?.id, job?.demo, job?.opening, job?.visit]);
  useEffect(() => {
    const opened = kept?.opened;
    if (opened !== undefined && 'bench' in opened) opened.bench.setUnits(units);
  }, [kept, units]);
  useEffect(() => () => keep(undefined), []);
  // the page of another job does not show this one while its own is on its way; one saved on this visit stays what it was
  const here = job === undefined || job.visit === settled.current;
  const shown = kept !== undefined && (here || isOf(kept, job)) ? kept.opened : undefined;
  const bench = shown !== undefined && 'bench' in shown ? shown.bench : undefined;
  return (
    <OpenedContext.Provider value={shown}>
      <BenchContext.Provider value={bench}>
        <SheetContext.Provider value={bench}>
          {bench === undefined ? null : <AfterSaving key={kept?.opening} />}
          {bench === undefined ? null : <LeaveGuard bench={bench} />}
          {children}
        </SheetContext.Provider>
      </BenchContext.Provider>
    </OpenedContext.Provider>
  );
}

/** Asks before the page is left with unsaved changes of the job. */
function LeaveGuard({ bench }: { readonly bench: Bench }): null {
  useLeaveGuard(useSelected(bench.store, isUnsaved));
  return null;
}

/** Whether what is open is the job of an address: a job that was saved meanwhile has the address of its id. */
function isOf({ opened, id, demo, opening }: Kept, job: JobVisit): boolean {
  if (opening !== job.opening) return false;
  const now = 'bench' in opened ? opened.bench.store.get().saved?.id : id;
  return now === job.id && (now !== undefined || demo === job.demo);
}
