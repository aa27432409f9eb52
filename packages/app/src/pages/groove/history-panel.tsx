import type { SurveyReport, SurveySeam } from '@furrow/engine';
import { SURVEY_VERDICT_WORDS, seamPlace } from '@furrow/papers';
import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';

interface HistoryPanelProps {
  readonly seam: SurveySeam;
  readonly gauge: SurveyReport['inputs'];
}

/** What was said before each recut, and what is said now. */
export function HistoryPanel({ seam, gauge }: HistoryPanelProps): VNode | null {
  const units = useUnits();
  if (seam.history.length === 0) return null;
  const used = seam.readings.filter((each) => each.used).length;
  const rows = [
    ...seam.history.map((each) => ({ ...each, cut: seam.cut_again[each.after_recut] })),
    { after_recut: seam.cut_again.length, verdict: seam.verdict, readings_used: used, cut: undefined },
  ];
  return (
    <section class="panel groove-history" aria-labelledby="groove-history-title">
      <h2 id="groove-history-title">What was said before</h2>
      <ol>
        {rows.map(({ after_recut, verdict, readings_used, cut }) => (
          <li key={after_recut}>
            {after_recut === 0 ? 'As first cut' : `After recut ${after_recut}`}:{' '}
            <strong>{SURVEY_VERDICT_WORDS[verdict]}</strong>, by {readings_used}{' '}
            {readings_used === 1 ? 'reading' : 'readings'}
            {cut === undefined
              ? '.'
              : `; then cut again from ${seamPlace(cut.from_mm, units)} to ${seamPlace(cut.to_mm, units)}.`}
          </li>
        ))}
      </ol>
      <p class="aside">
        Uncertainty of a reading: {gauge.gauge_u_from}. The record keeps every reading, with who and when.
      </p>
    </section>
  );
}
