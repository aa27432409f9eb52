import type { VNode } from 'preact';
import { PageLink } from '../../ui/route/index.ts';

interface KitMissingProps {
  /** Whether a kit is saved that jobs cannot be planned with. */
  readonly draft: boolean;
}

/** Says what a page without a kit cannot tell. */
export function KitMissing({ draft }: KitMissingProps): VNode {
  return (
    <section class="panel" aria-labelledby="kit-missing-title">
      <header class="panel-head">
        <h2 id="kit-missing-title">{draft ? 'The shop’s kit has mistakes' : 'No kit described yet'}</h2>
      </header>
      <p>
        Which leads and hoses go where, the volts at each point, the millivolts across each joint and the air
        pressures need the kit: power sources, leads, compressor and hoses. Below stand the checks that rest
        on the plan alone.
      </p>
      <p>
        <PageLink to="/kit" class="button">
          {draft ? 'Mend the kit' : 'Describe the kit'}
        </PageLink>
      </p>
    </section>
  );
}
