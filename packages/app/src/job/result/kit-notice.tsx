import type { VNode } from 'preact';
import { PageLink } from '../../ui/route/index.ts';
import { useBenchState, usedKit } from '../state/index.ts';

/** Says that a demo job is planned with a kit that nobody has, and where one's own is described. */
export function KitNotice(): VNode | null {
  const kit = usedKit(useBenchState((state) => state.kit));
  if (kit?.of !== 'demo') return null;
  return (
    <p class="kit-notice">
      Planned with the demo’s kit, an invention; a job of your own with the kit of your shop:{' '}
      <PageLink to="/kit">describe it</PageLink>.
    </p>
  );
}
