import { type CommissionCheck, evidenceOf, type FaultEvidence } from '@furrow/engine';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { type FaultAnswer, FaultsPanel, faultsView, newId, onlyNamed } from './faults/index.ts';
import { judgeTyped } from './judge-typed.ts';
import { useRig, useRigState } from './rig-context.ts';
import type { RigFinding, RigRecord } from './rig-record.ts';
import type { ShopFaults } from './use-fault-counts.ts';

interface RigFaultsProps {
  readonly checks: readonly CommissionCheck[];
  readonly shop: ShopFaults;
}

/** The panel of faults of this rig: fed by its readings, kept with its record, counted for the shop. */
export function RigFaults({ checks, shop }: RigFaultsProps): VNode {
  const rig = useRig();
  const findings = useRigState((state) => state.record.findings);
  const typed = useRigState((state) => state.record.readings);
  const open = openFinding(findings);
  const readings = readingEvidence(checks, typed);
  const titles = new Map(shop.model.causes.map(({ id, title }) => [id, title]));

  const answer = (observable: string, outcome: FaultAnswer): void => {
    const { [observable]: _, ...others } = open.symptoms;
    const symptoms = outcome === 'unknown' ? others : { ...others, [observable]: outcome };
    rig.find({ ...open, symptoms });
  };
  const found = (cause: string): void => {
    const names = new Set(shop.model.observables.map(({ id }) => id));
    const symptoms = onlyNamed({ ...open.symptoms, ...readings }, names) as RigFinding['symptoms'];
    rig.find({ ...open, symptoms, cause });
    shop.count({ id: open.id, cause, symptoms });
  };
  const undo = (id: string): void => {
    const finding = findings[id];
    if (finding === undefined) return;
    // only one fault is looked into at a time
    if (Object.hasOwn(findings, open.id)) rig.forget(id);
    else rig.find({ ...finding, cause: null });
    shop.uncount(id);
  };
  return (
    <>
      {shop.trouble === undefined ? null : (
        <p class="notice" role="alert">
          {shop.trouble.message}{' '}
          <button type="button" onClick={shop.trouble.again}>
            Try again
          </button>
        </p>
      )}
      <FaultsPanel
        model={shop.model}
        cases={shop.cases}
        answers={open.symptoms}
        readings={readings}
        found={Object.values(findings).flatMap(({ id, cause, note }) =>
          cause === null ? [] : [{ id, note, title: titles.get(cause) ?? cause }],
        )}
        onAnswer={answer}
        onFound={found}
        onNote={(id, note) => {
          const finding = findings[id];
          if (finding !== undefined) rig.find({ ...finding, note });
        }}
        onUndo={undo}
        placeOf={(observable) => {
          const check = checks.find(({ evidence, kind }) => evidence === observable && kind === 'measure');
          return check === undefined ? undefined : `#check-${check.id}`;
        }}
      />
    </>
  );
}

/** The check that tells most after what was read and answered, and where on the page its reading is typed. */
export interface NextBesideReading {
  readonly title: string;
  readonly minutes: number;
  readonly href: string;
}

/** The best next check of the rig, to stand beside a reading that is off; undefined where nothing is left to check. */
export function useNextCheck({ checks, shop }: RigFaultsProps): NextBesideReading | undefined {
  const findings = useRigState((state) => state.record.findings);
  const typed = useRigState((state) => state.record.readings);
  return useMemo(() => {
    const { symptoms } = openFinding(findings);
    const [best] = faultsView(shop.model, symptoms, readingEvidence(checks, typed)).next;
    if (best === undefined) return undefined;
    const own = checks.find(({ evidence, kind }) => evidence === best.check && kind === 'measure');
    return {
      title: best.title,
      minutes: best.minutes,
      href: own === undefined ? '#faults-title' : `#check-${own.id}`,
    };
  }, [checks, shop.model, findings, typed]);
}

/** The fault that is looked into; a new one where all are found. */
function openFinding(findings: RigRecord['findings']): RigFinding {
  const open = Object.values(findings).find(({ cause }) => cause === null);
  return open ?? { id: newId((bytes) => crypto.getRandomValues(bytes)), symptoms: {}, cause: null, note: '' };
}

/** What the readings say to the table of faults. */
export function readingEvidence(
  checks: readonly CommissionCheck[],
  readings: RigRecord['readings'],
): FaultEvidence {
  const judgements = checks.flatMap((check) => {
    const typed = judgeTyped(check, readings[check.id]?.text ?? '');
    return typed.is === 'judged' ? [typed.judgement] : [];
  });
  return evidenceOf(judgements);
}
