import { type SeamStripAxis, seamStripX } from '@furrow/papers/drawing';
import type { VNode } from 'preact';

interface SeamStripTorchProps {
  readonly axis: SeamStripAxis;
  /** Place of the torch from the start of the seam [m]. */
  readonly place: number;
}

/** The torch at the moment shown: a dashed line with an arc at its foot; the page says the same in words. */
export function SeamStripTorch({ axis, place }: SeamStripTorchProps): VNode {
  return (
    <svg
      class="seam-strip-torch"
      aria-hidden="true"
      width={24}
      height={axis.foot + 18}
      style={{ left: `${seamStripX(axis, place) - 12}px` }}
    >
      <path class="seam-strip-torch-line" d={`M12 20V${axis.foot + 4}`} />
      <path class="seam-strip-torch-arc" d={`M12 ${axis.foot + 4}l-6 12h12z`} />
    </svg>
  );
}
