import type { Example } from '@furrow/contract';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchTrials, fetchTrialsExamples } from '../../api/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { type KnowledgeDesk, openKnowledgeDesk } from './knowledge-desk.ts';
import { KnowledgeView } from './knowledge-view.tsx';
import './style.css';

export { sendTrials } from './send-trials.ts';

type Opened =
  | { readonly desk: KnowledgeDesk; readonly demo: Example | undefined }
  | { readonly trouble: string }
  | undefined;

/** What this shop knows: what it tried and gauged, what that taught, and how its predictions fared. */
export function KnowledgePage(): VNode {
  const [opened, setOpened] = useState<Opened>();
  useEffect(() => {
    let left = false;
    let desk: KnowledgeDesk | undefined;
    void Promise.all([fetchTrials(), fetchTrialsExamples()]).then(([trials, examples]) => {
      if (left) return;
      if (!trials.ok) setOpened({ trouble: trials.failure.message });
      else {
        desk = openKnowledgeDesk(trials.value, ownMemory(), later);
        setOpened({ desk, demo: examples.ok ? examples.value[0] : undefined });
      }
    });
    return () => {
      left = true;
      desk?.close();
    };
  }, []);
  if (opened === undefined) return <Waiting text="Opening what the shop knows." />;
  if ('trouble' in opened) return <Waiting text={opened.trouble} trouble />;
  return <KnowledgeView desk={opened.desk} demo={opened.demo} />;
}

function later(what: () => void, milliseconds: number): () => void {
  const timer = setTimeout(what, milliseconds);
  return () => clearTimeout(timer);
}
