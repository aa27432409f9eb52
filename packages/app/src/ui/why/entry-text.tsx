import type { VNode } from 'preact';
import type { HandbookEntry } from '../../api/index.ts';

/** One question of the handbook: what it answers, inputs with unit and range, source, worked number. */
export function EntryText({ entry }: { readonly entry: HandbookEntry }): VNode {
  const { summary, inputs, returns, source, worked } = entry;
  return (
    <div class="why-entry">
      {summary.split('\n\n').map((part) => (
        <p key={part}>{part}</p>
      ))}
      <dl>
        {inputs.map(({ name, text }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
        <div>
          <dt>gives</dt>
          <dd>{returns}</dd>
        </div>
        <div>
          <dt>source</dt>
          <dd>{source}</dd>
        </div>
      </dl>
      {/* a long line is scrolled to, by keys as well */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <pre tabIndex={0}>{worked.join('\n')}</pre>
    </div>
  );
}
