import type { ExpectedPass, RunExpectation } from './expectation.ts';
import type { WaySource } from './outcome.ts';

/** How a pass lies on the seam. */
export interface PassPlace {
  readonly planned: number | undefined;
  readonly complete: boolean;
  /** The wheel's way over the known length, where it was told by it [-]. */
  readonly ratio: number | undefined;
  readonly placeOf: (way: number) => number;
  readonly placeSdOf: (way: number) => number;
}

/** Part of the planned length by which a pass may differ and still be the whole of it [-]. */
const COMPLETE_WITHIN: Readonly<Record<WaySource, number>> = {
  position: 0.05,
  travel: 0.15,
  arc_time: 0.3,
  none: 0,
};
/** Standard deviation of a way that nothing anchors at its end, as a share of it [-]: judgement, no source. */
const WAY_SD: Readonly<Record<WaySource, number>> = {
  position: 0.001,
  travel: 0.02,
  arc_time: 0.06,
  none: 0,
};
/** Standard deviation of where the arc was struck [m]: judgement, no source. */
const STRIKE_SD = 0.003;

/** Anchors each pass at its start and end on the seam: known length, planned strikes, one zero for all positions. */
export class Anchor {
  private readonly expected: RunExpectation | undefined;
  private next = 0;
  /** Direction in which the position grows along the seam, and its reading at the start of the seam. */
  private rail: { readonly direction: number; readonly zero: number } | undefined;

  constructor(expected: RunExpectation | undefined) {
    this.expected = expected;
  }

  /** The planned pass that the one under way is taken for. */
  expectedPass(): ExpectedPass | undefined {
    return this.expected?.passes[Math.min(this.next, this.expected.passes.length - 1)];
  }

  expectedLength(): number | undefined {
    const pass = this.expectedPass();
    return pass && pass.to - pass.from;
  }

  /** Settles a pass that began at `origin` of the log's way and ended `ran` further on. */
  settle(way: WaySource, origin: number, ran: number, rowWay: number): PassPlace {
    const planned = this.expected?.passes[this.next];
    const length = this.expectedLength();
    const covered = Math.abs(ran);
    const ratio = length === undefined || way === 'none' ? undefined : covered / length;
    const complete = ratio !== undefined && Math.abs(ratio - 1) <= COMPLETE_WITHIN[way];
    if (ratio !== undefined && ratio >= 0.5) this.next += 1;
    const from = this.expectedPassOr(planned)?.from ?? 0;
    const spread = WAY_SD[way];
    const strike = Math.hypot(STRIKE_SD, rowWay / Math.sqrt(12));
    if (way === 'position') {
      this.rail ??= this.expected === undefined ? { direction: 1, zero: 0 } : railFrom(origin, ran, from);
      const { direction, zero } = this.rail;
      return {
        planned: planned?.number,
        complete,
        ratio,
        placeOf: (at) => (origin + at) * direction - zero,
        placeSdOf: (at) => Math.hypot(strike, spread * at),
      };
    }
    const scale = complete ? 1 / ratio : 1;
    return {
      planned: planned?.number,
      complete,
      ratio,
      placeOf: (at) => from + at * (Math.sign(ran) || 1) * scale,
      placeSdOf: (at) =>
        Math.hypot(
          strike,
          spread * at * (complete && covered > 0 ? Math.max(0, 1 - Math.abs(at) / covered) : 1),
        ),
    };
  }

  private expectedPassOr(planned: ExpectedPass | undefined): ExpectedPass | undefined {
    return planned ?? this.expected?.passes.at(-1);
  }
}

function railFrom(origin: number, ran: number, from: number): { direction: number; zero: number } {
  const direction = Math.sign(ran) || 1;
  return { direction, zero: origin * direction - from };
}
