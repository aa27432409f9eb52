import type { Verdict } from '@furrow/engine';
import type { VNode } from 'preact';

/** The demand as a bar against the fence of the limit: short of it, up to it, or through it. */
const SHAPES: Readonly<Record<Verdict, string>> = {
  holds: 'M1 6h9v8H1z',
  tight: 'M1 6h14v8H1z',
  fails: 'M1 6h22v8H1z',
};

/** The mark that goes with a verdict's word; its shape tells them apart without colour. */
export function VerdictMark({ verdict }: { readonly verdict: Verdict }): VNode {
  return (
    <svg class={`verdict-mark verdict-${verdict}`} viewBox="0 0 24 20" aria-hidden="true">
      <path class="verdict-demand" d={SHAPES[verdict]} />
      <path class="verdict-fence" d={verdict === 'fails' ? 'M16 1v4M16 15v4' : 'M16 1v18'} />
    </svg>
  );
}
