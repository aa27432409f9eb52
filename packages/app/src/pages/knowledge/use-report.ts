import { useEffect, useRef, useState } from 'preact/hooks';
import { type KnowledgeReply, type KnowledgeWorker, startKnowledgeWorker } from '../../work/index.ts';

/** What trials teach, worked out beside the page; undefined while it is on its way for the first time. */
export function useReport(trials: string | undefined): KnowledgeReply | undefined {
  const [reply, setReply] = useState<KnowledgeReply>();
  const worker = useRef<KnowledgeWorker | undefined>(undefined);
  const newest = useRef(0);
  useEffect(() => () => worker.current?.end(), []);
  useEffect(() => {
    if (trials === undefined) return;
    if (worker.current === undefined) {
      const started = startKnowledgeWorker();
      started.onReply = (next) => {
        if (next.id === newest.current) setReply(next);
      };
      started.onCrash = (message) => {
        started.end();
        worker.current = undefined;
        setReply({ id: newest.current, is: 'failure', message });
      };
      worker.current = started;
    }
    newest.current += 1;
    worker.current.post({ id: newest.current, trials });
  }, [trials]);
  return reply;
}
