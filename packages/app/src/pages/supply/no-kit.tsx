import type { VNode } from 'preact';
import { PageLink } from '../../ui/route/index.ts';

/** What there is to describe before power and air can be told. */
export function NoKit(): VNode {
  return (
    <section class="panel" aria-labelledby="no-kit-title">
      <header class="panel-head">
        <h2 id="no-kit-title">No kit described yet</h2>
      </header>
      <p>
        The job is planned by the process alone. Describe the shop’s kit once, and this page tells whether it
        carries the plan:
      </p>
      <ul class="needed-list">
        <li>
          each power source: its characteristic, its no-load voltage and the points on its rating plate;
        </li>
        <li>the electrode and work leads: size, length, joints;</li>
        <li>
          the air: compressor, receiver, every hose and fitting up to the torch, and the pressures you ask
          for;
        </li>
        <li>for a place of the control station: the bay, with what stands in it.</li>
      </ul>
      <p>
        <PageLink to="/kit" class="button">
          Describe the kit
        </PageLink>
      </p>
    </section>
  );
}
