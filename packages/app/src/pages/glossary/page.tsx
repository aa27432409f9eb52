import { GLOSSARY } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { SiteHeader } from '../../ui/site/index.ts';
import './style.css';

/** Words of the bench that not every shop uses. */
export function GlossaryPage(): VNode {
  return (
    <>
      <SiteHeader />
      <main class="plain-page" id="result" tabIndex={-1}>
        <section class="panel" aria-label="Glossary">
          <dl class="glossary">
            {GLOSSARY.map(({ term, meaning }) => (
              <div key={term}>
                <dt>{term}</dt>
                <dd>{meaning}</dd>
              </div>
            ))}
          </dl>
        </section>
      </main>
    </>
  );
}
