import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Waiting } from '../site/index.ts';
import { type Bench, BenchContext, DEMO_JOB, openBench, startOf } from '../state/index.ts';
import { startWorker } from '../worker/index.ts';
import { SupplyView } from './supply-view.tsx';

type Opened = { readonly bench: Bench } | { readonly trouble: string } | undefined;

interface SupplyPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** What power, leads and air make of a job's plan. */
export function SupplyPage({ id, demo = DEMO_JOB }: SupplyPageProps): VNode {
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
  if (opened === undefined) return <Waiting title="Power and air" text="Opening the job." />;
  if ('trouble' in opened) return <Waiting title="Power and air" text={opened.trouble} trouble />;
  return (
    <BenchContext.Provider value={opened.bench}>
      <SupplyView id={id} demo={demo} />
    </BenchContext.Provider>
  );
}
