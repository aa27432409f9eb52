import type { SurveySeam } from '@furrow/engine';
import { enoughWords, riskWords, seamPlace } from '@furrow/papers';
import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';

interface NextPanelProps {
  readonly seam: SurveySeam;
  /** Puts a place into the form. */
  readonly onMeasure: (at_mm: number) => void;
}

/** Where to measure next, the place that takes most risk away per minute first; or that it is enough. */
export function NextPanel({ seam, onMeasure }: NextPanelProps): VNode {
  const units = useUnits();
  return (
    <section class="panel groove-next" aria-labelledby="next-title">
      <h2 id="next-title">Measure next</h2>
      {seam.enough ? (
        <p>{enoughWords(seam.stretches)}</p>
      ) : (
        <ol>
          {seam.measure_next.map(({ at_mm, gain }) => (
            <li key={at_mm}>
              <button type="button" onClick={() => onMeasure(at_mm)}>
                {seamPlace(at_mm, units)}
              </button>{' '}
              <span class="aside">takes {riskWords(gain, seam.risk_unit, units)} of risk away</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
