import type { FaultEvidence, FaultModel } from '@furrow/engine';
import type { VNode } from 'preact';
import { AnswerChoice, type FaultAnswer } from './answer-choice.tsx';
import { CauseList } from './cause-list.tsx';
import { faultsView } from './faults-view.ts';
import { type FoundFault, FoundList } from './found-list.tsx';
import { NextCheck } from './next-check.tsx';

interface FaultsPanelProps {
  /** The table of faults, moved by what the shop has counted. */
  readonly model: FaultModel;
  /** Cases the shop has counted [-]. */
  readonly cases: number;
  /** What was answered by hand. */
  readonly answers: FaultEvidence;
  /** What the readings of the checks showed. */
  readonly readings: FaultEvidence;
  readonly found: readonly FoundFault[];
  readonly onAnswer: (observable: string, answer: FaultAnswer) => void;
  readonly onFound: (cause: string) => void;
  readonly onNote: (id: string, note: string) => void;
  readonly onUndo: (id: string) => void;
  readonly placeOf: (observable: string) => string | undefined;
}

/** Something is wrong: what the run showed, the causes by their chance, and the check that tells most. */
export function FaultsPanel(props: FaultsPanelProps): VNode {
  const { model, cases, answers, readings, found, onAnswer, onFound, onNote, onUndo, placeOf } = props;
  const view = faultsView(model, answers, readings);
  return (
    <section class="panel faults" aria-labelledby="faults-title">
      <header class="panel-head">
        <h2 id="faults-title">Faults</h2>
        <p class="caption">{originText(cases)}</p>
      </header>
      {view.known ? null : (
        <p>
          Nothing is known yet: the order below is how often each cause is the one. Say what the run showed.
        </p>
      )}
      {view.read.length === 0 ? null : (
        <section class="fault-part" aria-labelledby="read-title">
          <h3 id="read-title">From the readings</h3>
          <ul class="after-list">
            {view.read.map(({ id, words }) => (
              <li key={id}>{words}</li>
            ))}
          </ul>
        </section>
      )}
      <CauseList ranked={view.ranked} onFound={onFound} />
      <NextCheck model={model} next={view.next} onAnswer={onAnswer} placeOf={placeOf} />
      <FoundList found={found} onNote={onNote} onUndo={onUndo} />
      {view.looked.length === 0 ? null : (
        <section class="fault-part" aria-labelledby="looked-title">
          <h3 id="looked-title">Looked at</h3>
          {view.looked.map((observable) => (
            <AnswerChoice
              key={observable.id}
              observable={observable}
              answer={answers[observable.id] ?? 'unknown'}
              onAnswer={(answer) => onAnswer(observable.id, answer)}
            />
          ))}
        </section>
      )}
      <section class="fault-part" aria-labelledby="symptoms-title">
        <h3 id="symptoms-title">What the run showed</h3>
        {view.symptoms.map((observable) => (
          <AnswerChoice
            key={observable.id}
            observable={observable}
            answer={answers[observable.id] ?? 'unknown'}
            onAnswer={(answer) => onAnswer(observable.id, answer)}
          />
        ))}
      </section>
    </section>
  );
}

function originText(cases: number): string {
  const own = cases === 1 ? '1 case' : `${cases} cases`;
  return cases === 0
    ? 'chances are judgement until this shop has counted cases of its own'
    : `chances are judgement, moved by ${own} this shop has counted`;
}
