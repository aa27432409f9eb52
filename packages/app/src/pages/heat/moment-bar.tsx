import { formatAmount } from '@furrow/engine';
import type { VNode } from 'preact';
import { useEffect } from 'preact/hooks';
import { useUnits } from '../../ui/theme/index.ts';
import { useHeat, useHeatDesk } from './heat-context.ts';
import { frameOf, momentOf, type ShownHeat } from './heat-state.ts';
import { useTorch } from './use-torch.ts';

/** How long each moment is shown while it plays [ms]. */
const FRAME = 140;

/** The time through which the section is followed: to drag, to step with the arrow keys, to play. */
export function MomentBar({ shown }: { readonly shown: ShownHeat }): VNode {
  const desk = useHeatDesk();
  const time = useHeat((state) => state.time);
  const playing = useHeat((state) => state.playing);
  const { frames } = shown.heat.field;
  const moment = momentOf(shown, time);
  const last = frames.length - 1;
  const go = (to: number): void => {
    const frame = frames[Math.min(last, Math.max(0, to))];
    if (frame !== undefined) desk.lookAt(frame.time);
  };
  const toggle = (): void => {
    if (!playing && moment >= last) go(0);
    desk.play(!playing);
  };
  useEffect(() => {
    if (!playing) return undefined;
    if (moment >= last) {
      desk.play(false);
      return undefined;
    }
    const timer = setTimeout(() => go(moment + 1), FRAME);
    return () => clearTimeout(timer);
  }, [playing, moment, last]);
  const words = useMomentWords(shown);
  return (
    <div class="moment-bar">
      <button type="button" class="moment-play" aria-pressed={playing} onClick={toggle}>
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d={playing ? 'M4 3h4v14H4zM12 3h4v14h-4z' : 'M4 2l13 8-13 8z'} />
        </svg>
        {playing ? 'Pause' : 'Play'}
      </button>
      <button type="button" aria-label="Moment before" onClick={() => go(moment - 1)}>
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M14 3v14L5 10z" />
        </svg>
      </button>
      <button type="button" aria-label="Next moment" onClick={() => go(moment + 1)}>
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M6 3v14l9-7z" />
        </svg>
      </button>
      <input
        class="moment-slider"
        type="range"
        min={0}
        max={last}
        step={1}
        value={moment}
        aria-label="Moment"
        aria-valuetext={words}
        onInput={(event) => {
          desk.play(false);
          go(Number(event.currentTarget.value));
        }}
        onKeyDown={(event) => {
          if (event.key !== ' ') return;
          event.preventDefault();
          toggle();
        }}
      />
      <p class="moment-words">{words}</p>
    </div>
  );
}

/** The moment in words: the time, the pass, and where the torch is. */
function useMomentWords(shown: ShownHeat): string {
  const time = useHeat((state) => state.time);
  const units = useUnits();
  const torch = useTorch(shown);
  const frame = frameOf(shown, time);
  if (frame === undefined) return '';
  const when = formatAmount(frame.time, 'time', units);
  if (torch !== undefined) {
    return `${when}: pass ${torch.pass}, torch ${formatAmount(torch.place, 'length', units)} from the start`;
  }
  if (frame.pass === 0) return `${when}: before the first pass`;
  const passes = shown.heat.report.passes.length;
  return frame.pass < passes
    ? `${when}: between pass ${frame.pass} and pass ${frame.pass + 1}`
    : `${when}: after the last pass`;
}
