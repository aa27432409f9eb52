import type { FaultObservable, FaultOutcome } from '@furrow/engine';
import type { VNode } from 'preact';

/** An answer to a question of the table, or that it is not known. */
export type FaultAnswer = FaultOutcome | 'unknown';

type Choice = readonly [FaultAnswer, string];

const YES_NO: readonly Choice[] = [
  ['yes', 'Yes'],
  ['no', 'No'],
  ['unknown', 'Not known'],
];
const BAND: readonly Choice[] = [
  ['low', 'Low'],
  ['in', 'As it should be'],
  ['high', 'High'],
  ['unknown', 'Not known'],
];

function choicesOf({ otherwise }: FaultObservable): readonly Choice[] {
  return 'yes' in otherwise ? YES_NO : BAND;
}

interface AnswerChoiceProps {
  readonly observable: FaultObservable;
  readonly answer: FaultAnswer;
  readonly onAnswer: (answer: FaultAnswer) => void;
}

/** One question of the table with the answers to choose from. */
export function AnswerChoice({ observable, answer, onAnswer }: AnswerChoiceProps): VNode {
  const { id, ask } = observable;
  return (
    <fieldset class="answer">
      <legend>{ask}</legend>
      <span class="segments answer-segments">
        {choicesOf(observable).map(([value, words]) => (
          <label key={value}>
            <input
              type="radio"
              name={`answer-${id}`}
              checked={answer === value}
              onChange={() => onAnswer(value)}
            />
            <span>{words}</span>
          </label>
        ))}
      </span>
    </fieldset>
  );
}

interface AnswerButtonsProps {
  readonly observable: FaultObservable;
  readonly onAnswer: (answer: FaultAnswer) => void;
}

/** A question that another takes the place of once it is answered: pressed, so that the keys do not answer in passing. */
export function AnswerButtons({ observable, onAnswer }: AnswerButtonsProps): VNode {
  return (
    <fieldset class="answer">
      <legend>{observable.ask}</legend>
      <span class="actions">
        {choicesOf(observable)
          .filter(([value]) => value !== 'unknown')
          .map(([value, words]) => (
            <button key={value} type="button" onClick={() => onAnswer(value)}>
              {words}
            </button>
          ))}
      </span>
    </fieldset>
  );
}
