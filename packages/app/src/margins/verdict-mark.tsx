import type { Verdict } from '@furrow/engine';
import type { VNode } from 'preact';

/** The demand as a bar against the fence of the limit: short of it, up to it, or through it. */
const SHAPES: Readonly<Record<Verdict, string>> = {
  holds: 'M2 7h8v6H2z',
  tight: 'M2 7h12v6H2z',
  fails: 'M1 7h21v6H1z',
};

/** The mark that goes with a verdict's word; its shape tells them apart without colour. */
export function VerdictMark({ verdict }: { readonly verdict: Verdict }): VNode {
  return (
    <svg class={`verdict-mark verdict-${verdict}`} viewBox="0 0 24 20" aria-hidden="true">
      <path class="verdict-demand" d={SHAPES[verdict]} />
      <path class="verdict-fence" d={verdict === 'fails' ? 'M16 1v5M16 14v5M13 3l6 14' : 'M16 1v18'} />
    </svg>
  );
}
