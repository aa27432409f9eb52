import { type AnswerInputs, jobFields } from '@furrow/engine';
import { defaultText, defaultTitle } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';

/** What the result rests on: every default that stood in, the revision, the posterior and the seed. */
export function InputsPanel({ inputs }: { readonly inputs: AnswerInputs }): VNode {
  const { defaults_used: defaults } = inputs;
  const units = useUnits();
  return (
    <section class="panel" aria-labelledby="inputs-title">
      <header class="panel-head">
        <h2 id="inputs-title">What this rests on</h2>
      </header>
      <dl class="inputs">
        <div>
          <dt>Job revision</dt>
          <dd>
            <code title={inputs.revision}>{inputs.revision.slice(0, 12)}</code>
          </dd>
        </div>
        <div>
          <dt>Program</dt>
          <dd>Furrow {inputs.program_version}</dd>
        </div>
        <div>
          <dt>Removal law</dt>
          <dd>{inputs.posterior_id}</dd>
        </div>
        <div>
          <dt>Knowledge</dt>
          <dd>{inputs.knowledge.id}</dd>
        </div>
        <div>
          <dt>Seed</dt>
          <dd>{inputs.seed}</dd>
        </div>
      </dl>
      <details class="defaults">
        <summary>{defaults.length === 0 ? 'No defaults used' : `${defaults.length} defaults used`}</summary>
        <ul>
          {defaults.map((each) => (
            <li key={each.path}>
              <b>{defaultTitle(each.path, jobFields(), units)}</b> <code>{each.path}</code>:{' '}
              {defaultText(each, jobFields(), units)} <span class="aside">({each.why})</span>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
