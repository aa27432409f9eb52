import type { Limit } from '@furrow/engine';
import type { VNode } from 'preact';

const WIDTH = 200;
/** Where the limit stands on the scale. */
const FENCE = 150;

/** Demand drawn to scale against its limit; the words beside it say the same. */
export function MarginScale({ limit }: { readonly limit: Limit }): VNode {
  const share = limit.capacity === 0 ? (limit.demand > 0 ? 2 : 0) : limit.demand / limit.capacity;
  const end = Math.min(WIDTH, Math.max(2, share * FENCE));
  // a least limit forbids the side left of the fence, a greatest one the side right of it
  const forbidden = limit.sense === 'most' ? { x: FENCE, width: WIDTH - FENCE } : { x: 0, width: FENCE };
  return (
    <svg class="margin-scale" viewBox={`0 0 ${WIDTH} 14`} preserveAspectRatio="none" aria-hidden="true">
      <rect class="scale-forbidden" x={forbidden.x} y={1} width={forbidden.width} height={12} />
      <rect class="scale-demand" x={0} y={4} width={end} height={6} />
      <path class="scale-fence" d={`M${FENCE} 0v14`} />
    </svg>
  );
}
