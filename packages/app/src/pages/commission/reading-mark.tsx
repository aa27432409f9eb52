import type { ReadingJudgement } from '@furrow/engine';
import type { VNode } from 'preact';

type Verdict = ReadingJudgement['verdict'];

/** Words of a verdict, as they stand beside the reading. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  in_band: 'in band',
  low: 'low',
  high: 'high',
  met: 'as it should be',
  not_met: 'not as it should be',
};

/** The band as a trough, the reading as a dot in it, under it or over it; a tick or a cross where nothing is read off. */
const SHAPES: Readonly<Record<Verdict, string>> = {
  in_band: 'M14 10a4 4 0 1 1-8 0a4 4 0 1 1 8 0',
  low: 'M14 21a4 4 0 1 1-8 0a4 4 0 1 1 8 0',
  high: 'M14 -1a4 4 0 1 1-8 0a4 4 0 1 1 8 0',
  met: 'M3 10l5 5l9-11',
  not_met: 'M4 4l12 12M16 4l-12 12',
};

/** The mark of a reading's verdict; its shape tells them apart without colour. */
export function ReadingMark({ verdict }: { readonly verdict: Verdict }): VNode {
  const drawn = verdict === 'met' || verdict === 'not_met';
  return (
    <svg class={`reading-mark reading-${verdict}`} viewBox="-2 -6 24 32" aria-hidden="true">
      {drawn ? null : <path class="reading-fence" d="M0 5h20M0 15h20" />}
      <path class={drawn ? 'reading-stroke' : 'reading-dot'} d={SHAPES[verdict]} />
    </svg>
  );
}
