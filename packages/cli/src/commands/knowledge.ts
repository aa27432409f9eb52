import { answerKnowledge, type UnitSystem } from '@furrow/engine';
import { renderKnowledgeText } from '@furrow/papers';
import { badInput, type Run } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { loadTrials } from '../frame/load-document.ts';
import { printed } from '../frame/on-job.ts';

/** Tells what a shop has learned from its trials and gauged jobs. */
export const run: Run<{ readonly json: boolean; readonly units: UnitSystem }> = async (
  [file = '-'],
  { json, units },
) => {
  const loaded = await loadTrials(file);
  if (!loaded.ok) return badInput(loaded.lines);
  const report = answerKnowledge(loaded.read);
  return { exit: EXIT.plan, print: printed(json, report, () => renderKnowledgeText(report, units)) };
};
