import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { SheetContext } from '../../sheet/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { startWorker } from '../../work/index.ts';
import { type Bench, BenchContext, openBench, startOf } from '../state/index.ts';

type Opened = { readonly bench: Bench } | { readonly trouble: string } | undefined;

interface JobPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string;
  /** Title until the job is open. */
  readonly title: string;
  readonly children: ComponentChildren;
}

/** Opens a saved job, or a demo job, for a page: what it holds finds the job's bench, and its file to fill in. */
export function JobPage({ id, demo, title, children }: JobPageProps): VNode {
  const [opened, setOpened] = useState<Opened>();
  useEffect(() => {
    let left = false;
    let bench: Bench | undefined;
    void startOf(id, demo).then((start) => {
      if (left) return;
      if (typeof start === 'string') {
        setOpened({ trouble: start });
        return;
      }
      bench = openBench(start, { startWorker, memory: localStorage });
      setOpened({ bench });
    });
    return () => {
      left = true;
      bench?.close();
    };
  }, [id, demo]);
  if (opened === undefined) return <Waiting title={title} text="Opening the job." />;
  if ('trouble' in opened) return <Waiting title={title} text={opened.trouble} trouble />;
  return (
    <BenchContext.Provider value={opened.bench}>
      <SheetContext.Provider value={opened.bench}>{children}</SheetContext.Provider>
    </BenchContext.Provider>
  );
}
