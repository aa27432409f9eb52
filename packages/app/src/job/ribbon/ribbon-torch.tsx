import { type RibbonAxis, ribbonX } from '@furrow/papers/drawing';
import type { VNode } from 'preact';

interface RibbonTorchProps {
  readonly axis: RibbonAxis;
  /** Place of the torch from the start of the seam [m]. */
  readonly place: number;
}

/** The torch at the moment shown: a dashed line with an arc at its foot; the page says the same in words. */
export function RibbonTorch({ axis, place }: RibbonTorchProps): VNode {
  return (
    <svg
      class="ribbon-torch"
      aria-hidden="true"
      width={24}
      height={axis.foot + 18}
      style={{ left: `${ribbonX(axis, place) - 12}px` }}
    >
      <path class="ribbon-torch-line" d={`M12 20V${axis.foot + 4}`} />
      <path class="ribbon-torch-arc" d={`M12 ${axis.foot + 4}l-6 12h12z`} />
    </svg>
  );
}
