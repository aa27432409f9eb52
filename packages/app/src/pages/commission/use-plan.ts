import type { UnitSystem } from '@furrow/engine';
import { useEffect, useState } from 'preact/hooks';
import { createPlanner, type PlanReply, startWorker } from '../../work/index.ts';

/** The plan of a job with the shop's kit; undefined while it is worked out. */
export function usePlan(text: string, kit: string | undefined, units: UnitSystem): PlanReply | undefined {
  const [reply, setReply] = useState<PlanReply>();
  useEffect(() => {
    const planner = createPlanner(startWorker, setReply);
    planner.ask({ id: 1, text, units, ...(kit === undefined ? {} : { kit }) });
    return () => planner.close();
  }, [text, kit, units]);
  return reply;
}
