import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchExamples, fetchJob } from '../api/index.ts';
import { SheetContext } from '../sheet/index.ts';
import { Waiting } from '../site/index.ts';
import { type Bench, BenchContext, type BenchStart, draftOf, openBench } from '../state/index.ts';
import { startWorker } from '../worker/index.ts';
import { BenchView } from './bench-view.tsx';

/** The demo job shown when nothing else is asked for. */
const DEMO = 'penstock-seam';

type Opened = { readonly bench: Bench } | { readonly trouble: string } | undefined;

interface BenchPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** Opens a saved job, or a demo job, on the bench. */
export function BenchPage({ id, demo = DEMO }: BenchPageProps): VNode {
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
        <BenchView />
      </SheetContext.Provider>
    </BenchContext.Provider>
  );
}

/** What the bench starts with, or why it cannot start, in words. */
async function startOf(id: string | undefined, name: string): Promise<BenchStart | string> {
  if (id !== undefined) {
    const reply = await fetchJob(id);
    if (!reply.ok) return reply.failure.message;
    const { text, revision_number } = reply.value;
    return { text, savedAs: { id, revision: revision_number, text }, draft: draftOf(localStorage, id) };
  }
  const draftName = name === DEMO ? 'new' : `demo.${name}`;
  const draft = draftOf(localStorage, draftName);
  const reply = await fetchExamples();
  const demo = reply.ok ? reply.value.find((example) => example.name === name) : undefined;
  if (demo !== undefined) return { text: demo.text, draft, draftName };
  if (draft !== undefined) return { text: draft.text, draftName };
  return reply.ok ? 'There is no such demo job here.' : reply.failure.message;
}
