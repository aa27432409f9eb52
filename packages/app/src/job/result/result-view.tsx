import { planTables } from '@furrow/engine';
import { passTable } from '@furrow/papers/blocks';
import type { ComponentChildren, VNode } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import { BlockPanel } from '../../ui/block/index.ts';
import { MarginList } from '../../ui/margins/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { isOutdated, markPlanned, useBenchState } from '../state/index.ts';
import { AdvicePanel } from './advice-panel.tsx';
import { CautionPanel } from './caution-panel.tsx';
import { Comparison } from './comparison.tsx';
import { DoubtPanel } from './doubt-panel.tsx';
import { GaugeTable } from './gauge-table.tsx';
import { Headline } from './headline.tsx';
import { InputsPanel } from './inputs-panel.tsx';
import { RefusalPanel } from './refusal-panel.tsx';

/** The big numbers or, where no plan holds, why. */
export function ResultHead(): VNode | null {
  const planned = useBenchState((state) => state.planned);
  if (planned === undefined) {
    return <p class="headline-empty">The set-up appears here once the job is planned.</p>;
  }
  const { plan, refusal } = planned.answer;
  return (
    <>
      {plan === undefined ? null : <Headline plan={plan} />}
      {refusal === undefined ? null : <RefusalPanel refusal={refusal} />}
    </>
  );
}

/** Everything of the result under the drawings. */
export function ResultDetails(): VNode | null {
  const units = useUnits();
  const planned = useBenchState((state) => state.planned);
  useLayoutEffect(() => {
    // the other parts of the page that show this result are redrawn in the same go
    if (planned !== undefined) queueMicrotask(() => markPlanned(planned.edit));
  }, [planned]);
  if (planned === undefined) return null;
  const { plan, alternatives, advice, cautions, inputs } = planned.answer;
  return (
    <>
      {plan === undefined ? null : (
        <>
          <MarginList limits={plan.limits} />
          <BlockPanel
            id="passes"
            table={passTable(plan, units)}
            note="what each takes off holds for 90 in 100"
          />
          {planTables(plan).map((stop) => (
            <GaugeTable key={stop.after_layer} stop={stop} plan={plan} />
          ))}
          <DoubtPanel plan={plan} />
          <Comparison plan={plan} alternatives={alternatives} />
        </>
      )}
      <AdvicePanel advice={advice} />
      <CautionPanel cautions={cautions} />
      <InputsPanel inputs={inputs} />
    </>
  );
}

interface OutdatedBoxProps {
  readonly class: string;
  readonly children: ComponentChildren;
}

/** Marks what it holds as outdated while the job has changed since; what it holds is not drawn again for that. */
export function OutdatedBox({ class: name, children }: OutdatedBoxProps): VNode {
  const outdated = useBenchState(isOutdated);
  // a text with mistakes has no figures: those of the job before are struck out, so that nobody sets by them
  const struck = useBenchState((state) => state.issues.length > 0);
  return (
    <div class={`${name}${outdated ? ' outdated' : ''}${outdated && struck ? ' struck' : ''}`}>
      {children}
    </div>
  );
}
