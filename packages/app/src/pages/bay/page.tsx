import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchKit } from '../../api/index.ts';
import { type KitDesk, openKitDesk } from '../../job/kit/index.ts';
import { type Bench, BenchContext, DEMO_JOB, openBench, startOf } from '../../job/state/index.ts';
import { SheetContext } from '../../sheet/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { startWorker } from '../../work/index.ts';
import { BayView } from './bay-view.tsx';
import './style.css';

type Opened = { readonly bench: Bench; readonly desk: KitDesk } | { readonly trouble: string } | undefined;

interface BayPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** The bay in plan view for a job: what stands where, and where the control station goes. */
export function BayPage({ id, demo = DEMO_JOB }: BayPageProps): VNode {
  const [opened, setOpened] = useState<Opened>();
  useEffect(() => {
    let left = false;
    let leave = (): void => {};
    void Promise.all([startOf(id, demo), fetchKit()]).then(([start, kit]) => {
      if (left) return;
      if (typeof start === 'string') setOpened({ trouble: start });
      else if (!kit.ok) setOpened({ trouble: kit.failure.message });
      else {
        const desk = openKitDesk(kit.value, localStorage);
        const readable = (): string | undefined => {
          const { issues, file } = desk.store.get();
          return issues.length === 0 && file.text.trim() !== '' ? file.text : undefined;
        };
        const bench = openBench(
          { ...start, kit: readable() ?? start.kit },
          { startWorker, memory: localStorage },
        );
        // what is moved here is planned at once, saved or not
        const forget = desk.store.listen(() => {
          const text = readable();
          if (text !== undefined) bench.setKit(text);
        });
        leave = () => {
          forget();
          bench.close();
        };
        setOpened({ bench, desk });
      }
    });
    return () => {
      left = true;
      leave();
    };
  }, [id, demo]);
  if (opened === undefined) return <Waiting title="Bay plan" text="Opening the bay." />;
  if ('trouble' in opened) return <Waiting title="Bay plan" text={opened.trouble} trouble />;
  return (
    <BenchContext.Provider value={opened.bench}>
      <SheetContext.Provider value={opened.desk}>
        <BayView desk={opened.desk} id={id} demo={demo} />
      </SheetContext.Provider>
    </BenchContext.Provider>
  );
}
