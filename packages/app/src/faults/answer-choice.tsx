import type { FaultObservable, FaultOutcome } from '@furrow/engine';
import type { VNode } from 'preact';

/** An answer to a question of the table, or that it is not known. */
export type FaultAnswer = FaultOutcome | 'unknown';

interface AnswerChoiceProps {
  readonly observable: FaultObservable;
  readonly answer: FaultAnswer;
  readonly onAnswer: (answer: FaultAnswer) => void;
}

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

/** One question of the table with the answers to choose from. */
export function AnswerChoice({ observable, answer, onAnswer }: AnswerChoiceProps): VNode {
  const { id, ask, otherwise } = observable;
  const choices = 'yes' in otherwise ? YES_NO : BAND;
  return (
    <fieldset class="answer">
      <legend>{ask}</legend>
      <span class="segments answer-segments">
        {choices.map(([value, words]) => (
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
