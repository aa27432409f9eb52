import type { Issue, Outcome } from '../issue/index.ts';
import type { FaultEvidence, FaultModel, FaultObservable, FaultOutcome } from './model.ts';
import { outcomesOf } from './outcome-chance.ts';

/** One thing that is known. */
export interface Seen {
  readonly observable: FaultObservable;
  readonly outcome: FaultOutcome;
}

function namesNear(model: FaultModel, id: string): string | undefined {
  return model.observables.find((observable) => observable.id.includes(id) || id.includes(observable.id))?.id;
}

/** What is known, in the order of the table, or which entries cannot be understood. */
export function readEvidence(model: FaultModel, evidence: FaultEvidence): Outcome<readonly Seen[]> {
  const issues: Issue[] = [];
  const known = new Map<string, FaultOutcome>();
  const byId = new Map(model.observables.map((observable) => [observable.id, observable]));
  for (const [id, outcome] of Object.entries(evidence)) {
    if (outcome === undefined) continue;
    const observable = byId.get(id);
    const accepted = observable ? [...outcomesOf(observable), 'unknown'].join(', ') : 'a name of the table';
    if (observable === undefined) {
      const near = namesNear(model, id);
      const issue: Issue = {
        code: 'FAULT_EVIDENCE',
        message: `No symptom, inspection or reading is called "${id}".`,
        path: id,
        read: id,
        accepted,
      };
      issues.push(near === undefined ? issue : { ...issue, nearest: near });
    } else if (outcome !== 'unknown') {
      if (outcomesOf(observable).includes(outcome)) known.set(id, outcome);
      else {
        const message = `"${outcome}" is no answer to "${observable.ask}": answer ${accepted}.`;
        issues.push({ code: 'FAULT_EVIDENCE', message, path: id, read: String(outcome), accepted });
      }
    }
  }
  if (issues.length > 0) return { ok: false, issues };
  const seen = model.observables.flatMap((observable) => {
    const outcome = known.get(observable.id);
    return outcome === undefined ? [] : [{ observable, outcome }];
  });
  return { ok: true, value: seen };
}
