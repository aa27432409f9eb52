import type { FaultModel, NextFaultCheck } from '@furrow/engine';
import type { VNode } from 'preact';
import { AnswerButtons, type FaultAnswer } from './answer-choice.tsx';

interface NextCheckProps {
  readonly model: FaultModel;
  readonly next: readonly NextFaultCheck[];
  readonly onAnswer: (observable: string, answer: FaultAnswer) => void;
  /** Address of the check on the page where the reading is typed; undefined where there is none. */
  readonly placeOf: (observable: string) => string | undefined;
}

/** Checks told of after the best one [-]. */
const AFTER = 3;

/** The check that tells most per minute, and those after it. */
export function NextCheck({ model, next, onAnswer, placeOf }: NextCheckProps): VNode | null {
  const [best, ...others] = next;
  if (best === undefined) return null;
  const observable = model.observables.find(({ id }) => id === best.check);
  const place = placeOf(best.check);
  return (
    <section class="fault-part next-check" aria-labelledby="next-title">
      <h3 id="next-title" aria-live="polite">
        Best check next: {best.title}
      </h3>
      <p class="aside">{worthText(best)}</p>
      {observable === undefined ? null : (
        <AnswerButtons observable={observable} onAnswer={(answer) => onAnswer(best.check, answer)} />
      )}
      {place === undefined ? null : (
        <p>
          <a class="button" href={place}>
            Type the reading at its check
          </a>
        </p>
      )}
      <p class="aside">After it:</p>
      <ul class="after-list">
        {others.slice(0, AFTER).map((check) => (
          <li key={check.check}>
            {check.title} <span class="aside">{worthText(check)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function worthText({ minutes }: NextFaultCheck): string {
  return `takes ${minutes} min`;
}
