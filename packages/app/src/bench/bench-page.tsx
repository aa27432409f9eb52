import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { SheetContext } from '../sheet/index.ts';
import { Waiting } from '../site/index.ts';
import { type Bench, BenchContext, DEMO_JOB, openBench, startOf } from '../state/index.ts';
import { startWorker } from '../worker/index.ts';
import { BenchView } from './bench-view.tsx';

type Opened = { readonly bench: Bench } | { readonly trouble: string } | undefined;

interface BenchPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** Opens a saved job, or a demo job, on the bench. */
export function BenchPage({ id, demo = DEMO_JOB }: BenchPageProps): VNode {
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
  if (opened === undefined) return <Waiting title="Bench" text="Opening the job." />;
  if ('trouble' in opened) return <Waiting title="Bench" text={opened.trouble} trouble />;
  return (
    <BenchContext.Provider value={opened.bench}>
      <SheetContext.Provider value={opened.bench}>
        <BenchView demo={demo} />
      </SheetContext.Provider>
    </BenchContext.Provider>
  );
}
