import type { RankedFault } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';

interface CauseListProps {
  readonly ranked: readonly RankedFault[];
  readonly onFound: (cause: string) => void;
}

/** Causes shown before one asks for all of them [-]. */
const FIRST = 4;

/** The causes, the likeliest first, with what speaks for and against each. */
export function CauseList({ ranked, onFound }: CauseListProps): VNode {
  const [all, setAll] = useState(false);
  return (
    <section class="fault-part" aria-labelledby="causes-title">
      <h3 id="causes-title">Likeliest causes</h3>
      <ol class="cause-list">
        {(all ? ranked : ranked.slice(0, FIRST)).map((fault) => (
          <Cause key={fault.cause} fault={fault} onFound={onFound} />
        ))}
      </ol>
      <button type="button" class="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
        {all ? 'Show the likeliest alone' : `Show all ${ranked.length} causes`}
      </button>
    </section>
  );
}

interface CauseProps {
  readonly fault: RankedFault;
  readonly onFound: (cause: string) => void;
}

function Cause({ fault, onFound }: CauseProps): VNode {
  const { cause, title, probability, words, mechanism, remedy } = fault;
  return (
    <li class="cause">
      <h4>{title}</h4>
      <svg class="cause-scale" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <path class="cause-rest" d="M0 0h100v6h-100z" />
        <path class="cause-share" d={`M0 0h${(100 * probability).toFixed(1)}v6H0z`} />
      </svg>
      <p>{chanceIn(words, title)}</p>
      <details>
        <summary>Why</summary>
        <p>{words.slice(title.length + 2)}</p>
        <p class="aside">{mechanism}</p>
      </details>
      <p>
        <span class="remedy-label">What mends it</span>
        <span class="remedy">{remedy}</span>
      </p>
      <button type="button" aria-label={`It was this: ${title}`} onClick={() => onFound(cause)}>
        It was this
      </button>
    </li>
  );
}

/** The chance of a cause alone, without what speaks for and against it. */
function chanceIn(words: string, title: string): string {
  return words.slice(title.length + 2).split('. ', 1)[0] ?? '';
}
