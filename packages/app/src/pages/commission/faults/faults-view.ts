import {
  type FaultEvidence,
  type FaultModel,
  type FaultObservable,
  type NextFaultCheck,
  nextFaultChecks,
  type RankedFault,
  rankFaults,
} from '@furrow/engine';

/** All that the panel of faults shows. */
export interface FaultsView {
  readonly symptoms: readonly FaultObservable[];
  /** Readings taken at the checks, with what they showed, in words. */
  readonly read: readonly { readonly id: string; readonly words: string }[];
  /** Inspections and readings answered by hand. */
  readonly looked: readonly FaultObservable[];
  readonly ranked: readonly RankedFault[];
  readonly next: readonly NextFaultCheck[];
  /** Whether anything is known yet. */
  readonly known: boolean;
}

const TOLD = { low: 'low', in: 'as it should be', high: 'high', yes: 'yes', no: 'no' } as const;

/** Works out the panel from what was answered by hand and what the readings showed; a reading goes before an answer. */
export function faultsView(model: FaultModel, answers: FaultEvidence, readings: FaultEvidence): FaultsView {
  const names = new Set(model.observables.map(({ id }) => id));
  const evidence = onlyNamed({ ...answers, ...readings }, names);
  const ranked = rankFaults(model, evidence);
  const next = nextFaultChecks(model, evidence);
  const read = model.observables.flatMap(({ id, title }) => {
    const outcome = readings[id];
    return outcome === undefined || outcome === 'unknown'
      ? []
      : [{ id, words: `${title}: ${TOLD[outcome]}` }];
  });
  return {
    symptoms: model.observables.filter(({ kind }) => kind === 'symptom'),
    read,
    looked: model.observables.filter(
      ({ id, kind }) => kind !== 'symptom' && isAnswered(answers, id) && !isAnswered(readings, id),
    ),
    ranked: ranked.ok ? ranked.value : [],
    next: next.ok ? next.value : [],
    known: Object.values(evidence).some((outcome) => outcome !== undefined && outcome !== 'unknown'),
  };
}

/** What was seen, of names that the table holds: an older record may know others. */
export function onlyNamed(evidence: FaultEvidence, names: ReadonlySet<string>): FaultEvidence {
  return Object.fromEntries(Object.entries(evidence).filter(([id]) => names.has(id)));
}

function isAnswered(evidence: FaultEvidence, id: string): boolean {
  return evidence[id] !== undefined && evidence[id] !== 'unknown';
}
