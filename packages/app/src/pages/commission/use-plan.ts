import { useEffect, useState } from 'preact/hooks';
import { createPlanner, type PlanReply, startWorker } from '../../work/index.ts';

/** The plan of a job with the shop's kit; undefined while it is worked out. */
export function usePlan(text: string, kit: string | undefined): PlanReply | undefined {
  const [reply, setReply] = useState<PlanReply>();
  useEffect(() => {
    const planner = createPlanner(startWorker, setReply);
    planner.ask({ id: 1, text, ...(kit === undefined ? {} : { kit }) });
    return () => planner.close();
  }, [text, kit]);
  return reply;
}
